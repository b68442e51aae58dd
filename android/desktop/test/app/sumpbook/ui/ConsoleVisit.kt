package app.sumpbook.ui

import java.net.Socket
import java.net.URI
import java.net.URLEncoder
import java.net.http.HttpClient
import java.net.http.HttpRequest
import java.net.http.HttpResponse
import java.security.SecureRandom
import java.security.cert.X509Certificate
import javax.net.ssl.SSLContext
import javax.net.ssl.SSLEngine
import javax.net.ssl.X509ExtendedTrustManager
import kotlin.test.assertEquals

/** Somebody at the shop with a browser on the hub's pages: signs in, and reads what is printed. */
class ConsoleVisit(private val yard: Yard, private val address: String, role: String = "reader") {
    private val client = HttpClient.newBuilder().sslContext(trusting()).version(HttpClient.Version.HTTP_1_1).build()

    /** Its session, as a browser keeps it. */
    private var session = ""

    init {
        yard.saysTo("correct horse battery\n", "password", "Ilse Marrow", "--role", role)
        val answer = given("/sign-in", "name" to "Ilse Marrow", "password" to "correct horse battery")
        session = answer.headers().firstValue("Set-Cookie").get().substringBefore(';')
    }

    /** The codes on a certificate's slip: phone by phone, twelve digits each. */
    fun slipCodes(certificate: String): Map<String, String> {
        val rows = page("/certificates/$certificate/slip").split("<tr").filter { "class=\"code\"" in it }
        return rows.associate { row ->
            val cells = row.substringAfter('>').replace(Regex("<[^>]*>"), "\n").lines().map { it.trim() }.filter { it.isNotEmpty() }
            cells.first { it.any(Char::isLetter) && it !in HEADS } to cells.first { Regex("""[\d ]{12,}""").matches(it) }.filter(Char::isDigit)
        }
    }

    /** Asks somebody for a new PIN. */
    fun asksForNewPin(name: String) {
        given("/people/new-pin", "csrf" to token(), "name" to name)
    }

    private fun token() = Regex("""name="csrf" value="([^"]+)"""").find(page("/people"))!!.groupValues[1]

    /** The picture of a new phone's code: its black squares, how many squares wide it is, and the same as text. */
    fun codePicture(hub: String): Triple<List<Pair<Int, Int>>, Int, String> {
        val shown = page(given("/people/code", "csrf" to token(), "hub" to hub).headers().firstValue("Location").get())
        val (squares, whole) = squares(shown)
        return Triple(squares, whole, Regex("""class="code">([A-Z2-7 ]+)<""").find(shown)!!.groupValues[1].replace(" ", ""))
    }

    /** The code on a page that is printed: its black squares, and how many squares wide it is. */
    fun printedCode(path: String): Pair<List<Pair<Int, Int>>, Int> = squares(page(path))

    private fun squares(shown: String): Pair<List<Pair<Int, Int>>, Int> {
        val squares = Regex("""M(\d+) (\d+)h1v1h-1Z""").findAll(shown).map { it.groupValues[1].toInt() to it.groupValues[2].toInt() }.toList()
        return squares to Regex("""class="qr" viewBox="0 0 (\d+) """).find(shown)!!.groupValues[1].toInt()
    }

    /** The cab report of a unit as it was known at a moment, in words. */
    fun cabReport(door: String, knownAtMs: Long): String = page("/units/$door/cab-report?as-of=$knownAtMs").replace(Regex("<[^>]*>"), " ").replace(Regex("\\s+"), " ")

    private fun page(path: String): String {
        val answer = client.send(HttpRequest.newBuilder(at(path)).header("Cookie", session).build(), HttpResponse.BodyHandlers.ofString())
        assertEquals(200, answer.statusCode(), answer.body())
        return answer.body()
    }

    /** Sends a form as the page's own. */
    private fun given(path: String, vararg fields: Pair<String, String>): HttpResponse<String> {
        val form = fields.joinToString("&") { (name, value) -> "$name=${URLEncoder.encode(value, Charsets.UTF_8)}" }
        val asked = HttpRequest.newBuilder(at(path)).header("Origin", "https://$address").header("Content-Type", "application/x-www-form-urlencoded")
        if (session.isNotEmpty()) asked.header("Cookie", session)
        val answer = client.send(asked.POST(HttpRequest.BodyPublishers.ofString(form)).build(), HttpResponse.BodyHandlers.ofString())
        assertEquals(303, answer.statusCode(), answer.body())
        return answer
    }

    private fun at(path: String) = URI.create("https://$address$path")

    private companion object {
        /** On a narrow page each cell says its own head. */
        val HEADS = setOf("Phone", "Code")

        /** This machine's own hub: its key is compared elsewhere. */
        fun trusting(): SSLContext = SSLContext.getInstance("TLS").apply {
            init(null, arrayOf(object : X509ExtendedTrustManager() {
                override fun checkClientTrusted(chain: Array<X509Certificate>, type: String) = Unit
                override fun checkServerTrusted(chain: Array<X509Certificate>, type: String) = Unit
                override fun checkClientTrusted(chain: Array<X509Certificate>, type: String, socket: Socket) = Unit
                override fun checkServerTrusted(chain: Array<X509Certificate>, type: String, socket: Socket) = Unit
                override fun checkClientTrusted(chain: Array<X509Certificate>, type: String, engine: SSLEngine) = Unit
                override fun checkServerTrusted(chain: Array<X509Certificate>, type: String, engine: SSLEngine) = Unit
                override fun getAcceptedIssuers(): Array<X509Certificate> = emptyArray()
            }), SecureRandom())
        }
    }
}
