package app.sumpbook

import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File

/** What is tested here is what Gradle would put on a telephone. */
class VersionsTest {
    private val android = File(System.getProperty("sumpbook.root"), "android")
    private val catalogue = File(android, "gradle/libs.versions.toml").readLines()
    private val fetched = listOf("app", "test", "compiler", "compose").flatMap { File(android, "app/libraries/$it.txt").readLines() }

    private val versions = catalogue.mapNotNull { Regex("""^(\w+) = "([^"]+)"$""").find(it)?.destructured }.associate { (name, version) -> name to version }

    @Test
    fun theCatalogueOfGradleNamesWhatIsFetchedHere() {
        val modules = catalogue.mapNotNull { Regex("""module = "([^"]+)", version.ref = "(\w+)"""").find(it)?.destructured?.toList() }
        assertTrue("$modules", modules.size > 5)
        for ((module, ref) in modules.filter { "kotlin-gradle" !in it[0] }) {
            val here = fetched.filter { it.startsWith("$module:") || it.startsWith("$module-android:") }.map { it.split(":")[2] }.toSet()
            assertEquals("$module in libraries/", setOf(versions.getValue(ref)), here)
        }
        assertTrue(fetched.any { it == "org.jetbrains.kotlin:kotlin-compose-compiler-plugin-embeddable:${versions.getValue("kotlin")}:jar" })
    }

    @Test
    fun bothBuildsSayTheSameOfTheApp() {
        val gradle = File(android, "app/build.gradle.kts").readText()
        val here = File(android, "app/build").readText()
        fun of(text: String, pattern: String) = Regex(pattern).find(text)!!.groupValues[1]
        assertEquals(of(gradle, """minSdk = (\d+)"""), of(here, """\nmin=(\d+)"""))
        assertEquals(of(gradle, """targetSdk = (\d+)"""), of(here, """\nsdk=(\d+)"""))
        assertEquals(of(gradle, """applicationId = "([^"]+)""""), of(here, """\nnamespace=(\S+)"""))
        assertEquals(of(gradle, """versionName = "([^"]+)""""), of(here, """VERSION_NAME=(\S+)"""))
    }
}
