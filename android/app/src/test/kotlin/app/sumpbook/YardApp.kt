package app.sumpbook

import app.sumpbook.key.Sealer
import java.security.GeneralSecurityException
import javax.crypto.Cipher
import javax.crypto.KeyGenerator
import javax.crypto.spec.GCMParameterSpec

/** The app's own process with one thing else: there is no AndroidKeyStore on this machine. */
class YardApp : SumpbookApp() {
    override fun sealer(): Sealer = MemorySealer()
}

/** Seals with a key that is gone when the process ends. */
class MemorySealer : Sealer {
    private val key = KeyGenerator.getInstance("AES").apply { init(256) }.generateKey()

    override fun seal(open: ByteArray): ByteArray {
        val cipher = Cipher.getInstance("AES/GCM/NoPadding").apply { init(Cipher.ENCRYPT_MODE, key) }
        return cipher.iv + cipher.doFinal(open)
    }

    override fun open(sealed: ByteArray): ByteArray {
        if (sealed.size < 12) throw GeneralSecurityException("cut short")
        val cipher = Cipher.getInstance("AES/GCM/NoPadding")
        cipher.init(Cipher.DECRYPT_MODE, key, GCMParameterSpec(128, sealed, 0, 12))
        return cipher.doFinal(sealed, 12, sealed.size - 12)
    }
}

/** What lends files remembers its folders for the life of a process; here each test has folders of its own. */
fun lendFrom() {
    val known = androidx.core.content.FileProvider::class.java.getDeclaredField("sCache").apply { isAccessible = true }.get(null) as MutableMap<*, *>
    known.clear()
}
