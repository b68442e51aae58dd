plugins {
    alias(libs.plugins.android.application)
    alias(libs.plugins.compose.compiler)
}

val workspace = rootDir.parentFile
val rust = layout.buildDirectory.dir("rust")
val bindings = layout.buildDirectory.dir("bindings")

android {
    namespace = "app.sumpbook"
    compileSdk = 37
    // Links libraries for pages of 16 KB by itself.
    ndkVersion = "28.2.13676358"

    defaultConfig {
        applicationId = "app.sumpbook"
        minSdk = 26
        targetSdk = 35
        versionCode = 1
        versionName = "0.1.0"
        ndk { abiFilters += listOf("arm64-v8a", "x86_64") }
    }

    buildTypes {
        release {
            isMinifyEnabled = true
            isShrinkResources = true
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "keep.pro")
        }
    }

    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_11
        targetCompatibility = JavaVersion.VERSION_11
    }

    sourceSets {
        getByName("main") {
            kotlin.directories += listOf("$rootDir/ui/kotlin", bindings.get().asFile.path)
            res.directories += "$rootDir/ui/res"
            assets.directories += "$rootDir/ui/font"
            jniLibs.directories += rust.get().asFile.path
        }
    }
}

dependencies {
    implementation(libs.compose.ui)
    implementation(libs.compose.foundation)
    implementation(libs.material3)
    implementation(libs.activity.compose)
    implementation(libs.lifecycle.runtime)
    implementation(libs.core)
    implementation(libs.coroutines.android)
    implementation(libs.zxing)
    // The kind for Android: with its library for each processor, and without those of desktops.
    implementation(variantOf(libs.jna) { artifactType("aar") })
}

// The core for telephones, by cargo-ndk (`cargo install cargo-ndk`, `rustup target add aarch64-linux-android
// x86_64-linux-android`); 4.0 and later link for pages of 16 KB with any NDK.
val cargoNdk = tasks.register<Exec>("cargoNdk") {
    workingDir = workspace
    // What no book asks of SQLite stays out of a telephone.
    environment(
        "LIBSQLITE3_FLAGS",
        "-USQLITE_ENABLE_FTS3 -USQLITE_ENABLE_FTS3_PARENTHESIS -USQLITE_ENABLE_FTS5 -USQLITE_ENABLE_RTREE -USQLITE_ENABLE_DBSTAT_VTAB",
    )
    commandLine(
        "cargo", "ndk", "--platform", "26", "-t", "arm64-v8a", "-t", "x86_64", "-o", rust.get().asFile.path,
        "build", "--profile", "mobile", "--locked", "-p", "sumpbook-bindings",
    )
}

// Fails when a page of 16 KB would not do.
val pages = tasks.register<Exec>("pages") {
    dependsOn(cargoNdk)
    commandLine(
        "$projectDir/pages", rust.get().file("arm64-v8a/libsumpbook_bindings.so").asFile.path,
        rust.get().file("x86_64/libsumpbook_bindings.so").asFile.path,
    )
}

// What describes the core is the same for every processor, so the one of this machine is asked.
val hostCore = tasks.register<Exec>("hostCore") {
    workingDir = workspace
    commandLine("cargo", "build", "--locked", "-p", "sumpbook-bindings", "-p", "sumpbook-bindgen")
}
val kotlinBindings = tasks.register<Exec>("kotlinBindings") {
    dependsOn(hostCore)
    workingDir = workspace
    val library = System.mapLibraryName("sumpbook_bindings")
    commandLine(
        "target/debug/uniffi-bindgen", "generate", "target/debug/$library", "--language", "kotlin", "--no-format",
        "--out-dir", bindings.get().asFile.path,
    )
}

tasks.named("preBuild") { dependsOn(pages, kotlinBindings) }
