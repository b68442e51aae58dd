package app.sumpbook.ui

class WhenItHappensOnDesktopTest : WhenItHappens()
