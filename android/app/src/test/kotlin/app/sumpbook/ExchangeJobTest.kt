package app.sumpbook

import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.net.NetworkCapabilities
import android.os.Looper
import androidx.lifecycle.Lifecycle
import androidx.lifecycle.lifecycleScope
import androidx.test.core.app.ActivityScenario
import app.sumpbook.core.Phone
import app.sumpbook.core.TryWhen
import app.sumpbook.exchange.EXCHANGE_JOB
import app.sumpbook.exchange.ExchangeJob
import app.sumpbook.exchange.exchangeJob
import app.sumpbook.exchange.waitFor
import app.sumpbook.ui.HubYard
import app.sumpbook.ui.desk.HomeNow
import app.sumpbook.ui.until
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadow.api.Shadow

@RunWith(RobolectricTestRunner::class)
class ExchangeJobTest {
    private val app = RuntimeEnvironment.getApplication() as YardApp
    private val scheduler = app.getSystemService(JobScheduler::class.java)!!
    private val yard = HubYard()

    @After
    fun clear() {
        app.book.close()
        yard.close()
    }

    /** A phone in the app's own folder, let in by the hub, with its books. */
    private fun enrol(yard: HubYard): Phone {
        val phone = app.book.enrol { folder, keeper -> Phone.enrolByCode(folder, yard.code(), "yard phone 3", keeper, null) }
        phone.exchangeOnce(20_000u)
        yard.accept(phone.about().key)
        phone.exchangeOnce(20_000u)
        check(phone.fleet().units.isNotEmpty())
        return phone
    }

    private fun record(phone: Phone) = phone.recordLine("""{"unit":"TH-01","person":"Amos Tillery","kind":"start-air","body":{}}""")

    private fun onPhone(phone: Phone) = phone.whereItIs(0u).counts.onPhone.toInt()

    /** What the system does when there is a connection. */
    private fun runJob() {
        val service = Robolectric.buildService(ExchangeJob::class.java).create().get()
        assertTrue("it goes on after this", service.onStartJob(Shadow.newInstanceOf(JobParameters::class.java)))
        until("the job is finished") { shadowOf(service).isJobFinished }
        until("it has planned the next one") { scheduler.getPendingJob(EXCHANGE_JOB) != null }
    }

    @Test
    fun whatWasRecordedReachesTheShopWithNoWindowOpen() {
        yard.begin()
        val phone = enrol(yard)
        record(phone)
        val window = ActivityScenario.launch(MainActivity::class.java).moveToState(Lifecycle.State.RESUMED)
        window.moveToState(Lifecycle.State.DESTROYED)
        assertEquals(1, onPhone(phone))
        scheduler.cancelAll()
        runJob()
        assertEquals(0, onPhone(phone))
        assertTrue(yard.says("day-sheet"), phone.whereItIs(0u).counts.atShop > 0u)
    }

    @Test
    fun anExchangeUnderWayOutlivesTheWindowThatBeganIt() {
        yard.begin()
        val phone = enrol(yard)
        repeat(200) { record(phone) }
        val window = ActivityScenario.launch(MainActivity::class.java).moveToState(Lifecycle.State.RESUMED)
        val desk = (runBlocking { app.home.open() } as HomeNow.Open).desk
        // As the Where screen turns to the shop: from the window, for as long as there is one.
        window.onActivity { it.lifecycleScope.launch { desk.exchangeOnce(20_000) } }
        until("it is under way") { shadowOf(Looper.getMainLooper()).idle(); desk.underWay.value > 0 || onPhone(phone) < 200 }
        window.moveToState(Lifecycle.State.DESTROYED)
        until("the shop has all of it") { onPhone(phone) == 0 }
        assertEquals(200, phone.whereItIs(0u).counts.atShop.toInt())
    }

    @Test
    fun aJobUnderWayOutlivesTheWindow() {
        yard.begin()
        val phone = enrol(yard)
        repeat(200) { record(phone) }
        val window = ActivityScenario.launch(MainActivity::class.java).moveToState(Lifecycle.State.RESUMED)
        scheduler.cancelAll()
        val service = Robolectric.buildService(ExchangeJob::class.java).create().get()
        assertTrue(service.onStartJob(Shadow.newInstanceOf(JobParameters::class.java)))
        window.moveToState(Lifecycle.State.DESTROYED)
        until("the job is finished") { shadowOf(service).isJobFinished }
        assertEquals(0, onPhone(phone))
    }

    @Test
    fun withNoHubItIsPlannedAgainAndGoesWhenThereIsOne() {
        yard.begin()
        val phone = enrol(yard)
        yard.end()
        record(phone)
        runJob()
        assertEquals(1, onPhone(phone))
        val again = phone.wish() as TryWhen.NotBefore
        assertTrue("it is tried again by itself", again.v1 > System.currentTimeMillis())
        yard.begin()
        runJob()
        assertEquals(0, onPhone(phone))
    }

    @Test
    fun recordingInAWindowPlansAnExchange() {
        yard.begin()
        val phone = enrol(yard)
        check(runBlocking { app.home.open() } is HomeNow.Open)
        until("the first plan is made") { scheduler.getPendingJob(EXCHANGE_JOB) != null }
        scheduler.cancelAll()
        record(phone)
        until("a job is planned") { scheduler.getPendingJob(EXCHANGE_JOB) != null }
    }

    @Test
    fun aYardsNetworkWithoutTheInternetIsEnough() {
        val job = exchangeJob(app, 0)
        val asks = job.requiredNetwork!!
        assertFalse(asks.hasCapability(NetworkCapabilities.NET_CAPABILITY_INTERNET))
        assertFalse(asks.hasCapability(NetworkCapabilities.NET_CAPABILITY_VALIDATED))
        assertFalse(asks.hasCapability(NetworkCapabilities.NET_CAPABILITY_NOT_METERED))
        assertTrue(job.isPersisted)
        assertEquals(0, job.minLatencyMillis)
    }

    @Test
    fun whenToTryFollowsTheCoreWithinBounds() {
        val now = 1_792_000_000_000
        assertEquals(0, waitFor(TryWhen.Now, now, somethingToSend = true))
        assertEquals(60_000, waitFor(TryWhen.NotBefore(now + 60_000), now, somethingToSend = true))
        assertEquals(0, waitFor(TryWhen.NotBefore(now - 1), now, somethingToSend = true))
        val yearOff = waitFor(TryWhen.NotBefore(now + 400L * 86_400_000), now, somethingToSend = true)
        assertTrue("a clock that was wrong does not put it a year off", yearOff <= 6L * 60 * 60 * 1000)
        val news = waitFor(TryWhen.Now, now, somethingToSend = false)
        assertTrue("news is asked for, and not all the time: $news", news in 60_000..3_600_000)
    }
}
