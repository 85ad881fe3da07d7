package org.holdproof.report.layout;

import java.util.Locale;

/** A fingerprint in groups of four, as it is read aloud. */
final class FingerprintWords {
    private FingerprintWords() {}

    static String grouped(String hexadecimal) {
        return hexadecimal.toUpperCase(Locale.ROOT).replaceAll("(.{4})(?=.)", "$1 ");
    }
}
