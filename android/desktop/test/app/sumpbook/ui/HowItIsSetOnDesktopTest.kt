package app.sumpbook.ui

class HowItIsSetOnDesktopTest : HowItIsSet()
