package app.sumpbook.ui.words

/** Words of a list as they begin a button or a title. */
fun capital(words: String): String = words.replaceFirstChar(Char::titlecase)
