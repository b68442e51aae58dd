package app.sumpbook.ui.desk

/** What a typed PIN is. TEMPORARY until the library has it. */
sealed class PinSaid {
    object Right : PinSaid()
    data class Wrong(val waitS: Long) : PinSaid()
    data class Wait(val waitS: Long) : PinSaid()
    object NotChosen : PinSaid()
}
sealed class PinChosen { object Kept : PinChosen(); data class Not(val textKey: String) : PinChosen() }
fun app.sumpbook.core.PhoneInterface.pinChosen(person: String): Boolean = person.isEmpty()
fun app.sumpbook.core.PhoneInterface.givePin(person: String, pin: String): PinSaid = if (pin.isEmpty() || person.isEmpty()) PinSaid.NotChosen else PinSaid.Right
fun app.sumpbook.core.PhoneInterface.choosePin(person: String, pin: String, old: String?): PinChosen = if (pin.length + (old?.length ?: 0) + person.length > 5) PinChosen.Kept else PinChosen.Not("")
