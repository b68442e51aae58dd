package app.sumpbook.ui

class PassingOnOnDesktopTest : PassingOn()
