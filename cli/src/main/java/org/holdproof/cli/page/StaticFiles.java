package org.holdproof.cli.page;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/** The page's own files, from the class path. */
final class StaticFiles {
    private static final Pattern NAME = Pattern.compile("[a-z0-9-]+(/[a-z0-9-]+)?\\.(html|css|js|json|svg)");
    private static final String CHARTS = "/META-INF/resources/webjars/uplot/1.6.30/dist/";

    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "json", "application/json",
            "svg", "image/svg+xml");

    private final Map<String, Reply> seen = new ConcurrentHashMap<>();

    /** The file at a place; the page itself at the empty one. */
    Optional<Reply> at(String place) throws IOException {
        String name = place.isEmpty() ? "index.html" : place;
        if (!NAME.matcher(name).matches()) {
            return Optional.empty();
        }
        Reply before = seen.get(name);
        if (before != null) {
            return Optional.of(before);
        }
        Optional<Reply> read = read(name);
        read.ifPresent(reply -> seen.put(name, reply));
        return read;
    }

    private static Optional<Reply> read(String name) throws IOException {
        String resource =
                switch (name) {
                    case "charts.js" -> CHARTS + "uPlot.iife.min.js";
                    case "charts.css" -> CHARTS + "uPlot.min.css";
                    default -> "/org/holdproof/cli/page/" + name;
                };
        try (InputStream in = StaticFiles.class.getResourceAsStream(resource)) {
            if (in == null) {
                return Optional.empty();
            }
            String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
            return Optional.of(new Reply(200, String.valueOf(type), in.readAllBytes(), new HashMap<>()));
        }
    }
}
