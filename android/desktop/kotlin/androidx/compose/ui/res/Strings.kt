// Android's ui module has these three, the desktop's lacks them. In the same package, so that shared code says
// `stringResource(R.string.x)` on both.
package androidx.compose.ui.res

import androidx.compose.runtime.Composable
import androidx.compose.runtime.ReadOnlyComposable
import app.sumpbook.ui.desktop.LocalChromeWords

/** A string by its name. */
@Composable
@ReadOnlyComposable
fun stringResource(id: Int): String = LocalChromeWords.current.string(id)

/** A string with its values. */
@Composable
@ReadOnlyComposable
fun stringResource(id: Int, vararg formatArgs: Any): String = LocalChromeWords.current.string(id, *formatArgs)

/** The string for one or for many. */
@Composable
@ReadOnlyComposable
fun pluralStringResource(id: Int, count: Int, vararg formatArgs: Any): String =
    LocalChromeWords.current.plural(id, count, *formatArgs)
