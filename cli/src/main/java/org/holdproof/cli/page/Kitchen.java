package org.holdproof.cli.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.holdproof.core.input.SourceFile;
import org.holdproof.report.seal.NewSigningKey;
import org.holdproof.report.seal.SigningKey;
import org.holdproof.report.seal.UnusableKeyException;

/**
 * The kitchen folder: plain files that a person can read, copy and back up.
 *
 * <ul>
 *   <li>{@code kitchen.json}: name, place, time zone, authority
 *   <li>{@code instruments.json}, {@code products.json}: as the records named them last
 *   <li>{@code seal.p12}, {@code seal.json}: the seal's key, and who it names with its fingerprint
 *   <li>{@code 2031/31-0217-C.csv, .json, .figures.json, .pdf}: a batch's log as handed in, what was said of it, the
 *       figures, the sealed report
 * </ul>
 */
final class Kitchen {
    private static final String ABOUT = "kitchen.json";
    private static final String INSTRUMENTS = "instruments.json";
    private static final String PRODUCTS = "products.json";
    private static final String SEAL = "seal.p12";
    private static final String SEAL_FACTS = "seal.json";
    private static final String FIGURES = ".figures.json";

    private static final int YEARS = 5;
    private static final int MOST_LISTED = 500;
    private static final int LONGEST_NAME = 80;
    private static final int MOST_VERSIONS = 999;
    private static final Pattern YEAR = Pattern.compile("[0-9]{4}");
    private static final Pattern BATCH = Pattern.compile("[0-9]{4}/[^/\\\\]{1,120}");

    private final Path folder;

    Kitchen(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    Path keyFile() {
        return folder.resolve(SEAL);
    }

    ObjectNode describe() throws IOException {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("folder", folder.toString());
        json.put("exists", Files.isDirectory(folder));
        read(ABOUT).ifPresent(about -> json.set("about", about));
        read(INSTRUMENTS).ifPresent(instruments -> json.set("instruments", instruments));
        read(PRODUCTS).ifPresent(products -> json.set("products", products));
        if (Files.exists(keyFile())) {
            read(SEAL_FACTS).ifPresent(seal -> json.set("seal", seal));
        }
        return json;
    }

    /** Keeps what was said of the kitchen itself; makes the folder. */
    ObjectNode keep(Asked asked) throws Fault, IOException {
        ObjectNode about = Asked.MAPPER.createObjectNode();
        about.put("name", asked.text("name"));
        for (String name : List.of("place", "timeZone", "authority", "unit")) {
            asked.optionalText(name).ifPresent(text -> about.put(name, text));
        }
        writeList(ABOUT, about);
        return describe();
    }

    /** Makes the seal's key, for the first time only. */
    ObjectNode makeKey(Asked asked) throws Fault, IOException {
        if (Files.exists(keyFile())) {
            throw Fault.conflict("This kitchen has a seal already: " + keyFile() + ". It is never overwritten.");
        }
        char[] passphrase = asked.text("passphrase").toCharArray();
        try {
            if (passphrase.length < NewSigningKey.SHORTEST_PASSPHRASE) {
                throw Fault.passphrase("At least " + NewSigningKey.SHORTEST_PASSPHRASE
                        + " characters are needed; these are " + passphrase.length + ".");
            }
            Files.createDirectories(folder);
            SigningKey key = NewSigningKey.create(keyFile(), passphrase, asked.text("name"), Instant.now(), YEARS);
            ObjectNode facts = Asked.MAPPER.createObjectNode();
            facts.put("name", key.signer());
            facts.put("fingerprint", key.fingerprint().hex());
            facts.put("until", key.notAfter().toString());
            writeList(SEAL_FACTS, facts);
            return describe();
        } catch (UnusableKeyException | IllegalArgumentException unfit) {
            throw Fault.passphrase(String.valueOf(unfit.getMessage()));
        } finally {
            Arrays.fill(passphrase, '\0');
        }
    }

    /** What is kept of one batch. */
    @SuppressWarnings("ArrayRecordComponent") // never compared; a copy of a large file helps nobody
    record Batch(String id, String year, List<SourceFile> logs, byte[] record, byte[] figures, byte[] pdf) {}

    /** Keeps a batch; what is there already is never rewritten, a report sealed again lies beside the first. */
    ObjectNode keep(Batch batch) throws Fault, IOException {
        Path year = folder.resolve(batch.year());
        String plain = plain(batch.id());
        for (int version = 1; version <= MOST_VERSIONS; version++) {
            String name = version == 1 ? plain : plain + "-" + version;
            List<Path> logs = logFiles(year, name, batch.logs());
            Path record = year.resolve(name + ".json");
            Path pdf = year.resolve(name + ".pdf");
            if (absentOrSame(logs, batch.logs())
                    && KeptFile.absentOrSame(record, batch.record())
                    && !Files.exists(pdf)) {
                for (int i = 0; i < logs.size(); i++) {
                    keepUnlessThere(logs.get(i), batch.logs().get(i).bytes());
                }
                keepUnlessThere(record, batch.record());
                keepUnlessThere(year.resolve(name + FIGURES), batch.figures());
                KeptFile.writeNew(pdf, batch.pdf());
                remember(batch.record());
                ObjectNode json = Asked.MAPPER.createObjectNode();
                json.put("batch", batch.year() + "/" + name);
                json.put("log", logs.get(0).toString());
                json.put("record", record.toString());
                json.put("pdf", pdf.toString());
                return json;
            }
        }
        throw Fault.conflict("There are " + MOST_VERSIONS + " batches of the name " + plain + " already.");
    }

    /** One log lies under the batch's name; several have their number in it, in the order of the record. */
    private static List<Path> logFiles(Path year, String name, List<SourceFile> logs) {
        List<Path> files = new ArrayList<>();
        for (int i = 0; i < logs.size(); i++) {
            String number = logs.size() == 1 ? "" : "." + (i + 1);
            files.add(year.resolve(name + number + ending(logs.get(i).name())));
        }
        return files;
    }

    private static boolean absentOrSame(List<Path> files, List<SourceFile> logs) throws IOException {
        for (int i = 0; i < files.size(); i++) {
            if (!KeptFile.absentOrSame(files.get(i), logs.get(i).bytes())) {
                return false;
            }
        }
        return true;
    }

    private static void keepUnlessThere(Path file, byte[] content) throws Fault, IOException {
        if (!Files.exists(file)) {
            KeptFile.writeNew(file, content);
        }
    }

    /** The batches kept, the newest first. */
    ObjectNode batches() throws IOException {
        List<Path> records = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> years = Files.newDirectoryStream(folder, Files::isDirectory)) {
                for (Path year : years) {
                    if (YEAR.matcher(name(year)).matches()) {
                        try (DirectoryStream<Path> files = Files.newDirectoryStream(year, "*" + FIGURES)) {
                            files.forEach(records::add);
                        }
                    }
                }
            }
        }
        ObjectNode json = Asked.MAPPER.createObjectNode();
        ArrayNode list = json.putArray("batches");
        List<ObjectNode> batches = new ArrayList<>();
        for (Path figures : records) {
            summary(figures).ifPresent(batches::add);
        }
        batches.sort(Comparator.comparing((ObjectNode one) -> one.path("from").asText())
                .reversed());
        batches.stream().limit(MOST_LISTED).forEach(list::add);
        return json;
    }

    /** A batch in a line, from its figures; empty where they cannot be read, for others may keep files here too. */
    private Optional<ObjectNode> summary(Path figures) throws IOException {
        Optional<JsonNode> read = readFile(figures);
        if (read.isEmpty() || !read.get().path("verdict").isTextual()) {
            return Optional.empty();
        }
        String file = name(figures);
        String stem = file.substring(0, file.length() - FIGURES.length());
        JsonNode assessment = read.get();
        ObjectNode one = Asked.MAPPER.createObjectNode();
        one.put("batch", name(figures.resolveSibling(".").normalize()) + "/" + stem);
        one.put("id", assessment.path("batch").path("id").asText());
        one.put("product", assessment.path("batch").path("product").asText());
        one.put("verdict", assessment.path("verdict").asText());
        one.put("from", assessment.path("from").asText());
        one.put("to", assessment.path("to").asText());
        one.put("sealed", Files.exists(figures.resolveSibling(stem + ".pdf")));
        for (JsonNode check : assessment.path("checks")) {
            if (check.path("verdict").asText().equals(assessment.path("verdict").asText())
                    && !assessment.path("verdict").asText().equals("MET")) {
                one.put("reason", check.path("title").asText());
                break;
            }
        }
        return Optional.of(one);
    }

    /** A batch kept, as if its files had been handed in. */
    ObjectNode open(Asked asked, Shelf shelf) throws Fault, IOException {
        String batch = asked.text("batch");
        if (!BATCH.matcher(batch).matches() || batch.contains("..")) {
            throw Fault.badRequest("'batch' names no batch.");
        }
        Path record = folder.resolve(batch + ".json");
        Path year = folder.resolve(batch.substring(0, batch.indexOf('/')));
        String stem = batch.substring(batch.indexOf('/') + 1);
        if (!Files.isRegularFile(record)) {
            throw Fault.missing("This batch is no longer in the kitchen folder.");
        }
        String text = Files.readString(record);
        List<String> called = new ArrayList<>();
        Asked.MAPPER
                .readTree(text)
                .path("logs")
                .forEach(log -> called.add(log.path("file").asText()));
        ObjectNode json = Asked.MAPPER.createObjectNode().put("record", text);
        ArrayNode logs = json.putArray("logs");
        for (int i = 0; i < Math.max(1, called.size()); i++) {
            Path file = log(year, called.isEmpty() ? stem : stem + "." + (i + 1));
            byte[] log = Files.readAllBytes(file);
            Shelf.Item item = shelf.take(new ByteArrayInputStream(log), log.length);
            logs.addObject().put("file", item.id()).put("name", called.isEmpty() ? name(file) : called.get(i));
        }
        return json;
    }

    private static Path log(Path year, String stem) throws Fault {
        return ENDINGS.stream()
                .map(ending -> year.resolve(stem + ending))
                .filter(Files::isRegularFile)
                .findFirst()
                .orElseThrow(() -> Fault.missing("The log of this batch is no longer in the kitchen folder."));
    }

    private static final List<String> ENDINGS = List.of(".csv", ".tsv", ".txt", ".log", ".dat");

    private static String ending(String logName) {
        int dot = logName.lastIndexOf('.');
        String ending = dot < 0 ? "" : logName.substring(dot).toLowerCase(java.util.Locale.ROOT);
        return ENDINGS.contains(ending) ? ending : ".csv";
    }

    /** A batch's id as a file name: what could name another folder, or nothing at all, is replaced. */
    static String plain(String id) {
        String plain = id.strip().replaceAll("[^\\p{L}\\p{N}._-]+", "-").replaceAll("^[.-]+|[.-]+$", "");
        String cut = plain.length() > LONGEST_NAME ? plain.substring(0, LONGEST_NAME) : plain;
        return cut.isEmpty() ? "batch" : cut;
    }

    /** Remembers the instrument and the product of a record for the next cook. */
    private void remember(byte[] record) throws Fault, IOException {
        JsonNode said = Asked.MAPPER.readTree(new String(record, StandardCharsets.UTF_8));
        remember(INSTRUMENTS, "id", said.path("instrument"));
        for (JsonNode log : said.path("logs")) {
            remember(INSTRUMENTS, "id", log.path("instrument"));
        }
        remember(PRODUCTS, "name", said.path("product"));
    }

    private void remember(String list, String key, JsonNode one) throws Fault, IOException {
        if (!one.path(key).isTextual()) {
            return;
        }
        ArrayNode kept = Asked.MAPPER.createArrayNode().add(one);
        for (JsonNode before : read(list).orElse(Asked.MAPPER.createArrayNode())) {
            if (!before.path(key).equals(one.path(key))) {
                kept.add(before);
            }
        }
        writeList(list, kept);
    }

    private void writeList(String name, JsonNode content) throws Fault, IOException {
        String text = Asked.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(content) + "\n";
        KeptFile.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private Optional<JsonNode> read(String name) throws IOException {
        return readFile(folder.resolve(name));
    }

    /** A file's JSON; empty where there is none, or somebody wrote something else. */
    private static Optional<JsonNode> readFile(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try {
            return Optional.of(Asked.MAPPER.readTree(Files.readString(file)));
        } catch (JsonProcessingException | java.nio.charset.CharacterCodingException unreadable) {
            return Optional.empty();
        }
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }
}
