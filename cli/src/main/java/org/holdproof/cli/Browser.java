package org.holdproof.cli;

import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/** The user's browser, started the way the system starts it. */
final class Browser {
    private static final long PATIENCE_SECONDS = 3;

    private Browser() {}

    /** Opens an address; says whether the system took it. */
    static boolean open(URI address) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> command;
        if (system.contains("mac")) {
            command = List.of("open", address.toString());
        } else if (system.contains("windows")) {
            command = List.of("rundll32", "url.dll,FileProtocolHandler", address.toString());
        } else {
            boolean desktop = System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null;
            if (!desktop) {
                return false;
            }
            command = List.of("xdg-open", address.toString());
        }
        try {
            Process started = new ProcessBuilder(command)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return !started.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS) || started.exitValue() == 0;
        } catch (IOException none) {
            return false;
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
