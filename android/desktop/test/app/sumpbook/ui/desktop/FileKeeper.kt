package app.sumpbook.ui.desktop

import app.sumpbook.core.KeyKeeper
import java.io.File
import java.nio.channels.FileChannel
import java.nio.file.Files
import java.nio.file.StandardCopyOption
import java.nio.file.StandardOpenOption
import java.nio.file.attribute.PosixFilePermissions

/** Keeps the phone's key in a file that only its owner can read. A telephone has a keystore for it. */
class FileKeeper(private val file: File) : KeyKeeper {
    override fun keep(secret: ByteArray) {
        val path = file.toPath()
        Files.createDirectories(path.toAbsolutePath().parent)
        val beside = path.resolveSibling("${file.name}.new")
        Files.deleteIfExists(beside)
        // Made with its rights, so that nobody reads it in between.
        Files.createFile(beside, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")))
        Files.write(beside, secret)
        FileChannel.open(beside, StandardOpenOption.WRITE).use { it.force(true) }
        Files.move(beside, path, StandardCopyOption.ATOMIC_MOVE)
        FileChannel.open(path.toAbsolutePath().parent).use { it.force(true) }
    }

    override fun giveBack(): ByteArray? = if (file.exists()) file.readBytes() else null
}
