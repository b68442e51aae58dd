package app.sumpbook.key

/** Closes bytes so that only this device opens them again. */
interface Sealer {
    /** Closes them; the same bytes give other ones each time. */
    fun seal(open: ByteArray): ByteArray

    /** Opens what [seal] gave. Throws when it was changed, or when what closed it is gone. */
    fun open(sealed: ByteArray): ByteArray
}
