package app.sumpbook.ui

/** A JPEG that says of itself that its left side is above: what a camera writes that was held upright. */
fun turnedToTheRight(jpeg: ByteArray): ByteArray {
    val said = byteArrayOf(
        0xFF.toByte(), 0xE1.toByte(), 0, 34, 'E'.code.toByte(), 'x'.code.toByte(), 'i'.code.toByte(), 'f'.code.toByte(), 0, 0,
        'M'.code.toByte(), 'M'.code.toByte(), 0, 42, 0, 0, 0, 8,
        0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0,
        0, 0, 0, 0,
    )
    // After the mark that begins every JPEG.
    return jpeg.copyOfRange(0, 2) + said + jpeg.copyOfRange(2, jpeg.size)
}
