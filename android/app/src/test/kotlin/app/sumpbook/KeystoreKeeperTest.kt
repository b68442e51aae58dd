package app.sumpbook

import app.sumpbook.core.KeyKind
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneException
import app.sumpbook.key.KeystoreKeeper
import app.sumpbook.ui.HubYard
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import java.io.File

@RunWith(RobolectricTestRunner::class)
class KeystoreKeeperTest {
    private val file = File(RuntimeEnvironment.getApplication().noBackupFilesDir, "kept.key")
    private val keeper = KeystoreKeeper(file, MemorySealer())
    private val secret = ByteArray(32) { (it * 7).toByte() }

    @Test
    fun whatIsKeptComesBackAndDoesNotStandInTheFile() {
        assertNull(keeper.giveBack())
        keeper.keep(secret)
        assertArrayEquals(secret, keeper.giveBack())
        val inFile = file.readBytes().toList()
        assertFalse("the secret stands in the file", inFile.windowed(8).any { it == secret.toList().take(8) })
        keeper.keep(ByteArray(32))
        assertArrayEquals(ByteArray(32), keeper.giveBack())
    }

    @Test
    fun aChangedFileIsToldAndNotTakenForAnotherKey() {
        keeper.keep(secret)
        file.writeBytes(file.readBytes().apply { this[size - 1] = (this[size - 1] + 1).toByte() })
        assertEquals(KeyKind.KEYSTORE, assertThrows(PhoneException.Key::class.java) { keeper.giveBack() }.kind)
    }

    @Test
    fun aPhoneIsSetUpAndOpensAgainWithIt() {
        HubYard().use { yard ->
            val app = RuntimeEnvironment.getApplication() as YardApp
            val phone = app.book.enrol { folder, keeper -> Phone.enrolByFile(folder, yard.invitation(), "yard phone 3", keeper, null) }
            val key = phone.about().key
            app.book.close()
            assertEquals(key, app.book.phone()!!.about().key)
            app.book.close()
        }
    }
}
