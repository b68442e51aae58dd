package app.sumpbook.key

import android.util.AtomicFile
import app.sumpbook.core.KeyKeeper
import app.sumpbook.core.KeyKind
import app.sumpbook.core.PhoneException
import java.io.File
import java.io.IOException
import java.security.GeneralSecurityException
import java.security.ProviderException

/** Keeps the phone's secret sealed in a file that no backup takes along. */
class KeystoreKeeper(private val file: File, private val sealer: Sealer) : KeyKeeper {
    override fun keep(secret: ByteArray) = said {
        val sealed = sealer.seal(secret)
        file.parentFile?.mkdirs()
        val kept = AtomicFile(file)
        val out = kept.startWrite()
        try {
            out.write(sealed)
            // Writes through to the disk before the earlier file gives way.
            kept.finishWrite(out)
        } catch (why: IOException) {
            kept.failWrite(out)
            throw why
        }
    }

    override fun giveBack(): ByteArray? = said {
        val kept = AtomicFile(file)
        if (file.exists() || kept.baseFile.exists()) sealer.open(kept.readFully()) else null
    }

    private fun <T> said(act: () -> T): T = try {
        act()
    } catch (why: GeneralSecurityException) {
        throw PhoneException.Key(KeyKind.KEYSTORE, why.toString())
    } catch (why: ProviderException) {
        throw PhoneException.Key(KeyKind.KEYSTORE, why.toString())
    } catch (why: IOException) {
        throw PhoneException.Key(KeyKind.FILE, why.toString())
    }
}
