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
class ConsoleVisit(private val yard: Yard, private val address: String) {
    private val client = HttpClient.newBuilder().sslContext(trusting()).version(HttpClient.Version.HTTP_1_1).build()

    /** Its session, as a browser keeps it. */
    private val session: String

    init {
        yard.saysTo("correct horse battery\n", "password", "Ilse Marrow", "--role", "reader")
        val form = listOf("name" to "Ilse Marrow", "password" to "correct horse battery")
            .joinToString("&") { (name, value) -> "$name=${URLEncoder.encode(value, Charsets.UTF_8)}" }
        val asked = HttpRequest.newBuilder(at("/sign-in")).header("Origin", "https://$address")
            .header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(form)).build()
        val answer = client.send(asked, HttpResponse.BodyHandlers.ofString())
        assertEquals(303, answer.statusCode(), answer.body())
        session = answer.headers().firstValue("Set-Cookie").get().substringBefore(';')
    }

    /** The codes on a certificate's slip: phone by phone, twelve digits each. */
    fun slipCodes(certificate: String): Map<String, String> {
        val answer = client.send(HttpRequest.newBuilder(at("/certificates/$certificate/slip")).header("Cookie", session).build(), HttpResponse.BodyHandlers.ofString())
        assertEquals(200, answer.statusCode(), answer.body())
        return Regex("""<tr[^>]*>\s*<t[dh][^>]*>(.*?)</t[dh]>\s*<td[^>]*>.*?class="code">([\d ]+)<""", RegexOption.DOT_MATCHES_ALL)
            .findAll(answer.body()).associate { it.groupValues[1].replace(Regex("<[^>]*>"), "").trim() to it.groupValues[2].filter(Char::isDigit) }
    }

    private fun at(path: String) = URI.create("https://$address$path")

    private companion object {
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
