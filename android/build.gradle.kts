buildscript {
    // The Kotlin that the Android plugin compiles with: the one the compiler plugin of Compose belongs to.
    dependencies { classpath(libs.kotlin.gradle) }
}

plugins {
    alias(libs.plugins.android.application) apply false
    alias(libs.plugins.compose.compiler) apply false
}
