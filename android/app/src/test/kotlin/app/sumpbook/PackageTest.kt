package app.sumpbook

import android.content.pm.ApplicationInfo
import android.content.pm.PackageManager
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.xmlpull.v1.XmlPullParser

/** What the merged manifest says: libraries may add to it, and what they add must have been looked at. */
@RunWith(RobolectricTestRunner::class)
class PackageTest {
    private val app = RuntimeEnvironment.getApplication()
    private val asks = PackageManager.GET_PERMISSIONS or PackageManager.GET_ACTIVITIES or PackageManager.GET_SERVICES or
        PackageManager.GET_RECEIVERS or PackageManager.GET_PROVIDERS
    private val here = app.packageManager.getPackageInfo(app.packageName, asks)

    @Test
    fun itAsksForNoMoreThanItUses() {
        val own = "${app.packageName}.DYNAMIC_RECEIVER_NOT_EXPORTED_PERMISSION"
        assertEquals(
            setOf("INTERNET", "ACCESS_NETWORK_STATE", "RECEIVE_BOOT_COMPLETED", "POST_NOTIFICATIONS", "VIBRATE", "RECORD_AUDIO"),
            (here.requestedPermissions!!.toSet() - own).map { it.substringAfterLast('.') }.toSet(),
        )
    }

    @Test
    fun onlyTheWindowIsOpenToOthers() {
        val all = listOfNotNull(here.activities?.toList(), here.services?.toList(), here.providers?.toList()).flatten()
        val open = all.filter { it.exported }.map { it.name }
        assertEquals(listOf(MainActivity::class.java.name), open)
        val receivers = here.receivers.orEmpty().filter { it.exported && it.permission == null }.map { it.name }
        assertEquals(emptyList<String>(), receivers)
    }

    @Test
    fun nothingLeavesByBackup() {
        assertEquals(0, app.applicationInfo.flags and ApplicationInfo.FLAG_ALLOW_BACKUP)
        val excluded = mutableMapOf<String, MutableSet<String>>()
        val rules = app.resources.getXml(R.xml.nothing_leaves)
        var way = ""
        while (rules.next() != XmlPullParser.END_DOCUMENT) {
            if (rules.eventType != XmlPullParser.START_TAG) continue
            if (rules.name == "exclude") excluded.getOrPut(way) { mutableSetOf() } += rules.getAttributeValue(null, "domain") else way = rules.name
        }
        val everything = setOf("root", "file", "database", "sharedpref", "external")
        assertEquals(mapOf("cloud-backup" to everything, "device-transfer" to everything), excluded)
    }

    @Test
    fun nothingGoesInClear() {
        assertEquals(0, app.applicationInfo.flags and ApplicationInfo.FLAG_USES_CLEARTEXT_TRAFFIC)
    }
}
