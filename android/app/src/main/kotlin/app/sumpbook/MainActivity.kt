package app.sumpbook

import android.content.Context
import android.content.Intent
import android.os.Build
import android.os.Bundle
import android.view.WindowManager
import androidx.activity.ComponentActivity
import androidx.activity.compose.BackHandler
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.activity.result.contract.ActivityResultContracts
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableIntStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.lifecycle.lifecycleScope
import app.sumpbook.hand.AppLanguage
import app.sumpbook.hand.CameraAndPicker
import app.sumpbook.hand.Microphone
import app.sumpbook.hand.PinnedWindow
import app.sumpbook.hand.SharedFiles
import app.sumpbook.notice.Notices
import app.sumpbook.ui.Door
import app.sumpbook.ui.desk.LocalCameBack
import app.sumpbook.ui.desk.LocalFiles
import app.sumpbook.ui.desk.LocalHeld
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.LocalSounds
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.launch

/** The one window. What it shows is the shared shell; what a telephone adds is handed to it here. */
class MainActivity : ComponentActivity() {
    private val app get() = application as SumpbookApp
    private val unitAsked = MutableStateFlow<String?>(null)
    private var cameBack by mutableIntStateOf(0)
    private lateinit var pictures: CameraAndPicker
    private lateinit var files: SharedFiles
    private lateinit var pinned: PinnedWindow
    private lateinit var sounds: Microphone
    private val mayNotify = registerForActivityResult(ActivityResultContracts.RequestPermission()) { }

    override fun attachBaseContext(base: Context) = super.attachBaseContext(AppLanguage.wrap(base))

    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        pictures = CameraAndPicker(this)
        files = SharedFiles(this)
        pinned = PinnedWindow(this, app::holdNotices)
        sounds = Microphone(this)
        app.settings.look()
        enableEdgeToEdge()
        if (savedInstanceState == null) came(intent)
        val family = fontFamily(assets)
        setContent {
            val settled by app.settings.now.collectAsState()
            val languageHere = resources.configuration.locales[0].language
            LaunchedEffect(settled.way.language) { if (languageChangedUnseen(settled.way.language, languageHere)) recreate() }
            CompositionLocalProvider(LocalPictures provides pictures, LocalSounds provides sounds, LocalFiles provides files, LocalSettings provides app.settings, LocalCameBack provides cameBack, LocalHeld provides pinned) {
                AndroidFace(family, settled) { Shown() }
            }
        }
    }

    override fun onStart() {
        super.onStart()
        cameBack++
    }

    override fun onNewIntent(intent: Intent) {
        super.onNewIntent(intent)
        came(intent)
    }

    @Composable
    private fun Shown() {
        val back = rememberSaveable(saver = BackStack.Saver) { BackStack() }
        val asked by unitAsked.collectAsState()
        val given by files.given.collectAsState()
        // The officer's page is left with the signer's PIN and in no other way.
        BackHandler(back.canGoBack) { if (back.top !is Place.Roadside) back.back() }
        // The officer's page stays lit while it is read.
        LaunchedEffect(back.top) { lit(back.top is Place.Roadside) }
        LaunchedEffect(asked, back.signer) {
            val unit = asked
            // Somebody has to say who signs first; then it opens.
            if (unit != null && back.signer != null) {
                unitAsked.value = null
                back.unit(unit)
            }
        }
        LaunchedEffect(given, back.signer) { if (given != null && back.signer != null && back.top !is Place.HandOver) back.go(Place.HandOver()) }
        LaunchedEffect(back.signer) { if (back.signer != null) askOnce() }
        Door(app.home, back)
    }

    private fun lit(on: Boolean) {
        if (on) window.addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON) else window.clearFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
    }

    private fun came(intent: Intent) {
        if (intent.action == Notices.OPEN_UNIT) unitAsked.value = intent.getStringExtra(Notices.UNIT)
        lifecycleScope.launch(Dispatchers.IO) { files.receive(intent) }
    }

    /** Notices need a yes from Android 13 on. Asked once: whoever said no is not asked again by us. */
    private fun askOnce() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU) return
        val kept = getSharedPreferences("asked", MODE_PRIVATE)
        if (kept.getBoolean("notices", false)) return
        kept.edit().putBoolean("notices", true).apply()
        mayNotify.launch(android.Manifest.permission.POST_NOTIFICATIONS)
    }

    /** Before Android 13 nobody makes the window anew when the language was chosen. */
    private fun languageChangedUnseen(chosen: String, here: String) =
        Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU && chosen != here && (chosen == "es" || here == "es")
}
