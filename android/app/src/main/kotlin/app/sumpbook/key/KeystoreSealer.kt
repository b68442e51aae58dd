package app.sumpbook.key

import android.content.Context
import android.content.pm.PackageManager
import android.os.Build
import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyProperties
import android.security.keystore.StrongBoxUnavailableException
import java.security.GeneralSecurityException
import java.security.KeyStore
import javax.crypto.Cipher
import javax.crypto.KeyGenerator
import javax.crypto.SecretKey
import javax.crypto.spec.GCMParameterSpec

/**
 * Closes bytes with an AES-256-GCM key that was made in Android's keystore and never leaves it; in a chip of its own
 * where the device has one. It asks for no unlocked screen: the exchange goes on in a pocket.
 */
class KeystoreSealer(private val context: Context) : Sealer {
    override fun seal(open: ByteArray): ByteArray {
        val cipher = Cipher.getInstance(WAY)
        cipher.init(Cipher.ENCRYPT_MODE, kept() ?: made())
        cipher.updateAAD(ABOUT)
        val closed = cipher.doFinal(open)
        return byteArrayOf(FORM, cipher.iv.size.toByte()) + cipher.iv + closed
    }

    override fun open(sealed: ByteArray): ByteArray {
        if (sealed.size < 2 || sealed[0] != FORM) throw GeneralSecurityException("sealed in another form")
        val begins = 2 + sealed[1]
        if (sealed[1] < 1 || sealed.size <= begins) throw GeneralSecurityException("cut short")
        val key = kept() ?: throw GeneralSecurityException("the keystore no longer has the key that closed it")
        val cipher = Cipher.getInstance(WAY)
        cipher.init(Cipher.DECRYPT_MODE, key, GCMParameterSpec(TAG_BITS, sealed, 2, begins - 2))
        cipher.updateAAD(ABOUT)
        return cipher.doFinal(sealed, begins, sealed.size - begins)
    }

    private fun kept(): SecretKey? = KeyStore.getInstance(STORE).run {
        load(null)
        getKey(ALIAS, null) as SecretKey?
    }

    private fun made(): SecretKey {
        val chip = Build.VERSION.SDK_INT >= Build.VERSION_CODES.P &&
            context.packageManager.hasSystemFeature(PackageManager.FEATURE_STRONGBOX_KEYSTORE)
        if (!chip) return made(inChip = false)
        return try {
            made(inChip = true)
        } catch (_: StrongBoxUnavailableException) {
            made(inChip = false)
        }
    }

    private fun made(inChip: Boolean): SecretKey {
        val asked = KeyGenParameterSpec.Builder(ALIAS, KeyProperties.PURPOSE_ENCRYPT or KeyProperties.PURPOSE_DECRYPT)
            .setBlockModes(KeyProperties.BLOCK_MODE_GCM)
            .setEncryptionPaddings(KeyProperties.ENCRYPTION_PADDING_NONE)
            .setKeySize(256)
        if (inChip && Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) asked.setIsStrongBoxBacked(true)
        return KeyGenerator.getInstance(KeyProperties.KEY_ALGORITHM_AES, STORE).run {
            init(asked.build())
            generateKey()
        }
    }

    private companion object {
        const val STORE = "AndroidKeyStore"
        const val ALIAS = "sumpbook-device"
        const val WAY = "AES/GCM/NoPadding"
        const val TAG_BITS = 128
        const val FORM: Byte = 1

        /** What is sealed is nothing but this: bytes sealed for another use do not open here. */
        val ABOUT = "sumpbook device key 1".toByteArray()
    }
}
