package org.holdproof.core.rules.loading;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.CsvSheet;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;

/** The files rules are read from, by their path inside the tables' folder: built in, a site's own, or an archive's. */
public final class TableFiles {
    /** The edition's name, and the list of the built-in files. */
    public static final String EDITION = "edition.json";
    /** Written by the program into a set that holds a site's own files: which ones they are. */
    public static final String SITE = "site.json";

    private static final String ROOT = "/org/holdproof/tables/";
    private static final int MAX_FILE_BYTES = 4 << 20;
    private static final int MAX_FILES = 1000;
    private static final Pattern KNOWN = Pattern.compile("(sources(-[^/]+)?\\.json"
            + "|(kinetics|cooling|holding|reheating|measurement|records|packaging|humidity|oven-conditions|parasites|surface|gaps|allowances|time-limits|exposure|shelf-life|cooking|growth-limits"
            + "|growth-models|growth-lags|growth-facts|inactivation|bath-times|quality-model|quality-facts|cuts|weight-losses|loss-ranges|yields|tender-points)(-[^/]+)?\\.csv"
            + "|lethality/[^/]+\\.csv|authorities/[^/]+\\.json)");

    private final NavigableMap<String, byte[]> contents;

    private TableFiles(NavigableMap<String, byte[]> contents) {
        this.contents = contents;
    }

    /** The files in the jar. */
    public static TableFiles builtIn() throws UnreadableInputException {
        NavigableMap<String, byte[]> contents = new TreeMap<>();
        byte[] edition = resource(EDITION);
        contents.put(EDITION, edition);
        for (String path : StrictJson.read(EDITION, edition, "the list of tables")
                .field("files")
                .texts()) {
            contents.put(path, resource(path));
        }
        return new TableFiles(contents);
    }

    private static byte[] resource(String path) {
        try (InputStream in = TableFiles.class.getResourceAsStream(ROOT + path)) {
            if (in == null) {
                throw new IllegalStateException("the built-in table " + path + " is missing from this build");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** These files with a site's folder laid over them: the same path replaces, another path adds. */
    public TableFiles overlaidBy(Path folder) throws IOException, UnreadableInputException {
        if (!Files.isDirectory(folder)) {
            throw Place.file(folder.toString())
                    .fault(
                            Files.exists(folder) ? "a file" : "nothing",
                            "a folder with rule tables",
                            "Give the folder that holds the site's own tables.");
        }
        NavigableMap<String, byte[]> merged = new TreeMap<>(contents);
        List<String> own = new ArrayList<>();
        List<Path> found;
        try (Stream<Path> walk = Files.walk(folder)) {
            found = walk.filter(path -> !Files.isDirectory(path)).sorted().toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        for (Path path : found) {
            String name = name(folder.relativize(path));
            if (isIgnored(name)) {
                continue;
            }
            requireKnown(name);
            if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS) || Files.size(path) > MAX_FILE_BYTES) {
                throw Place.file(name)
                        .fault(
                                "a link, a device or more than 4 MiB",
                                "a plain file of at most 4 MiB",
                                "Put the table itself into the folder.");
            }
            merged.put(name, Files.readAllBytes(path));
            own.add(name);
        }
        if (own.isEmpty()) {
            throw Place.file(folder.toString())
                    .fault(
                            "no table",
                            "at least one rule table",
                            "Copy a built-in table's header into a file of the same name and fill it.");
        }
        merged.put(SITE, StrictJson.list("files", own));
        return new TableFiles(merged);
    }

    private static String name(Path relative) {
        List<String> parts = new ArrayList<>();
        relative.forEach(part -> parts.add(part.toString()));
        return String.join("/", parts);
    }

    private static boolean isIgnored(String name) {
        String last = name.substring(name.lastIndexOf('/') + 1);
        return last.startsWith(".") || last.startsWith("README");
    }

    /** The rows of a topic's table and of the tables that add to it. */
    List<CsvRow> rows(String topic, List<String> columns) throws UnreadableInputException {
        List<CsvRow> rows = new ArrayList<>();
        for (String file : ofTopic(topic, ".csv")) {
            rows.addAll(CsvSheet.read(file, bytes(file), columns));
        }
        return rows;
    }

    private static void requireKnown(String name) throws UnreadableInputException {
        if (!KNOWN.matcher(name).matches()) {
            throw Place.file(name)
                    .fault(
                            "a file no rule is read from",
                            "a built-in table's name, that name with a suffix (cooling-site.csv), lethality/NAME.csv or"
                                    + " authorities/NAME.json",
                            "Rename the file, or take it out of the folder.");
        }
    }

    /** The files of an archive that {@link #archive()} made. */
    public static TableFiles fromArchive(byte[] zip) throws UnreadableInputException {
        NavigableMap<String, byte[]> contents = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                String name = entry.getName();
                if (!name.equals(EDITION) && !name.equals(SITE)) {
                    requireKnown(name);
                }
                byte[] bytes = in.readNBytes(MAX_FILE_BYTES + 1);
                if (bytes.length > MAX_FILE_BYTES
                        || contents.size() >= MAX_FILES
                        || contents.put(name, bytes) != null) {
                    throw notOurs(name + " twice, too long, or one of too many");
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            throw notOurs("a damaged archive");
        }
        if (!contents.containsKey(EDITION)) {
            throw notOurs("no " + EDITION);
        }
        return new TableFiles(contents);
    }

    private static UnreadableInputException notOurs(String found) {
        return Place.file("the archive of tables")
                .fault(
                        found,
                        "the archive of rule tables a report was judged by",
                        "Take the archive from the report again, or ask its author for a fresh copy.");
    }

    /**
     * All files as one zip, the same bytes for the same files on every machine: sorted, undated, stored without
     * compression.
     */
    public byte[] archive() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            for (Map.Entry<String, byte[]> file : contents.entrySet()) {
                ZipEntry entry = new ZipEntry(file.getKey());
                entry.setMethod(ZipEntry.STORED);
                entry.setTimeLocal(LocalDateTime.of(1980, 1, 1, 0, 0));
                entry.setSize(file.getValue().length);
                CRC32 crc = new CRC32();
                crc.update(file.getValue());
                entry.setCrc(crc.getValue());
                out.putNextEntry(entry);
                out.write(file.getValue());
                out.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** SHA-256 over every file's path, length and bytes, in the order of their paths; the first 12 hex digits. */
    public String digest() {
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
        for (Map.Entry<String, byte[]> file : contents.entrySet()) {
            digest.update(file.getKey().getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0);
            digest.update(ByteBuffer.allocate(Long.BYTES)
                    .putLong(file.getValue().length)
                    .array());
            digest.update(file.getValue());
        }
        return HexFormat.of().formatHex(digest.digest()).substring(0, 12);
    }

    /** The paths, sorted. */
    public List<String> paths() {
        return List.copyOf(contents.keySet());
    }

    /** The files of one topic: {@code cooling.csv} and every {@code cooling-….csv}. */
    List<String> ofTopic(String stem, String extension) {
        return contents.keySet().stream()
                .filter(path ->
                        path.equals(stem + extension) || (path.startsWith(stem + "-") && path.endsWith(extension)))
                .toList();
    }

    /** The files of one folder. */
    List<String> inFolder(String folder) {
        return contents.keySet().stream()
                .filter(path -> path.startsWith(folder + "/"))
                .toList();
    }

    public boolean has(String path) {
        return contents.containsKey(path);
    }

    public byte[] bytes(String path) {
        byte[] bytes = contents.get(path);
        if (bytes == null) {
            throw new IllegalArgumentException("no table " + path);
        }
        return bytes;
    }
}
