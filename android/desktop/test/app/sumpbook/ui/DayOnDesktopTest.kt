package app.sumpbook.ui

class DayOnDesktopTest : Day()
