package org.holdproof.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Looks at files every so often, until the size or the time of one of them has changed. */
final class Watch {
    private static final Pattern EVERY = Pattern.compile("\\s*([0-9]{1,4})\\s*(s|min)\\s*");
    private static final Duration SHORTEST = Duration.ofSeconds(1);
    private static final Duration LONGEST = Duration.ofMinutes(60);

    private final List<Path> files;
    private final Duration every;
    private List<Seen> seen;

    /** What was seen of a file; a file that is missing has a size of -1. */
    private record Seen(long size, FileTime changed) {
        static Seen of(Path file) {
            try {
                BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
                return new Seen(attributes.size(), attributes.lastModifiedTime());
            } catch (IOException missing) {
                return new Seen(-1, FileTime.fromMillis(0));
            }
        }
    }

    Watch(List<Path> files, Duration every) {
        this.files = List.copyOf(files);
        this.every = every;
        seen = look();
    }

    /**
     * Waits until a file has changed since the last look, or so many looks are over.
     *
     * @return whether one has changed
     */
    boolean waitForChange(int looks) throws InterruptedException {
        for (int look = 0; look < looks; look++) {
            Thread.sleep(every.toMillis());
            List<Seen> now = look();
            if (!now.equals(seen)) {
                seen = now;
                return true;
            }
        }
        return false;
    }

    Duration every() {
        return every;
    }

    private List<Seen> look() {
        List<Seen> now = new ArrayList<>();
        files.forEach(file -> now.add(Seen.of(file)));
        return now;
    }

    /**
     * Reads {@code 30 s} or {@code 2 min}.
     *
     * @throws Refusal if it is no such time, or not between one second and an hour
     */
    static Duration every(String text) throws Refusal {
        Matcher matcher = EVERY.matcher(text);
        if (matcher.matches()) {
            long count = Long.parseLong(matcher.group(1));
            Duration every = matcher.group(2).equals("s") ? Duration.ofSeconds(count) : Duration.ofMinutes(count);
            if (every.compareTo(SHORTEST) >= 0 && every.compareTo(LONGEST) <= 0) {
                return every;
            }
        }
        throw Refusal.usage(String.format(
                Locale.ROOT,
                "--every %s: a time from 1 s to 60 min was expected, with its unit, such as '30 s' or '2 min'",
                text));
    }
}
