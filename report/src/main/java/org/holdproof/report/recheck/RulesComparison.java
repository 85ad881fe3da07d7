package org.holdproof.report.recheck;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * How the rules inside a report compare with the published ones, figure by figure.
 *
 * @param sameEdition whether both name the same edition: then every difference is somebody's alteration
 * @param siteFiles whether the archive says that a site's own files are in it
 * @param differences each figure that differs, in the order of the files; none where the rules are the published ones
 */
public record RulesComparison(boolean sameEdition, boolean siteFiles, List<Difference> differences) {
    private static final String EDITION = "edition.json";
    private static final String SITE = "site.json";
    private static final ObjectMapper JSON = new ObjectMapper();

    public RulesComparison {
        differences = List.copyOf(differences);
    }

    /**
     * One figure that differs.
     *
     * @param rule which rule, as file and id, such as {@code cooling.csv: us-food-code-2022, 1}
     * @param member which of its figures
     * @param published as published; empty where there is no such rule
     * @param here as in the report; empty where it is left out
     */
    public record Difference(String rule, String member, Optional<String> published, Optional<String> here) {
        @Override
        public String toString() {
            return rule + (member.isEmpty() ? "" : ", " + member) + ": published " + published.orElse("nothing")
                    + ", here " + here.orElse("nothing");
        }
    }

    /** Whether the rules are the published ones to the last byte. */
    public boolean isPublished() {
        return differences.isEmpty();
    }

    /**
     * Compares two archives of tables.
     *
     * @param here the archive in the report, as the program itself writes one
     * @param published the published tables' archive
     */
    public static RulesComparison of(byte[] here, byte[] published) {
        Map<String, byte[]> ours = files(here);
        Map<String, byte[]> theirs = files(published);
        List<Difference> differences = new ArrayList<>();
        TreeSet<String> names = new TreeSet<>(ours.keySet());
        names.addAll(theirs.keySet());
        names.remove(SITE);
        for (String name : names) {
            byte[] own = ours.getOrDefault(name, new byte[0]);
            byte[] other = theirs.getOrDefault(name, new byte[0]);
            if (!Arrays.equals(own, other)) {
                compare(name, cells(name, own), cells(name, other), differences);
            }
        }
        boolean sameEdition =
                Arrays.equals(ours.getOrDefault(EDITION, new byte[0]), theirs.getOrDefault(EDITION, new byte[1]));
        return new RulesComparison(sameEdition, ours.containsKey(SITE), differences);
    }

    private static void compare(
            String file,
            Map<String, Map<String, String>> here,
            Map<String, Map<String, String>> published,
            List<Difference> differences) {
        int before = differences.size();
        TreeSet<String> rules = new TreeSet<>(published.keySet());
        rules.addAll(here.keySet());
        for (String rule : rules) {
            String named = file + ": " + rule;
            if (!here.containsKey(rule) || !published.containsKey(rule)) {
                differences.add(new Difference(named, "", words(published.get(rule)), words(here.get(rule))));
                continue;
            }
            Map<String, String> own = here.get(rule);
            Map<String, String> other = published.get(rule);
            TreeSet<String> members = new TreeSet<>(other.keySet());
            members.addAll(own.keySet());
            for (String member : members) {
                if (!own.getOrDefault(member, "").equals(other.getOrDefault(member, ""))) {
                    differences.add(new Difference(
                            named,
                            member,
                            Optional.ofNullable(other.get(member)),
                            Optional.ofNullable(own.get(member))));
                }
            }
        }
        if (differences.size() == before) {
            differences.add(new Difference(file, "", Optional.of("as published"), Optional.of("spelt otherwise")));
        }
    }

    private static Optional<String> words(@org.jspecify.annotations.Nullable Map<String, String> members) {
        return Optional.ofNullable(members).map(present -> "a rule: " + String.join(", ", present.values()));
    }

    /** A file's rules by id, and of each its figures by name. */
    private static Map<String, Map<String, String>> cells(String file, byte[] bytes) {
        if (bytes.length == 0) {
            return Map.of();
        }
        try {
            return file.endsWith(".csv") ? rows(bytes) : leaves(JSON.readTree(bytes));
        } catch (IOException | RuntimeException unreadable) {
            return Map.of("the whole file", Map.of("content", "unreadable"));
        }
    }

    private static Map<String, Map<String, String>> rows(byte[] bytes) throws IOException {
        Map<String, Map<String, String>> rows = new LinkedHashMap<>();
        List<String> heads = List.of();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(new String(bytes, StandardCharsets.UTF_8))) {
            for (CsvRecord row : reader) {
                if (heads.isEmpty()) {
                    heads = row.getFields();
                    continue;
                }
                Map<String, String> cells = new LinkedHashMap<>();
                for (int i = 0; i < row.getFieldCount(); i++) {
                    cells.put(i < heads.size() ? heads.get(i) : "column " + (i + 1), row.getField(i));
                }
                String id = row.getField(0);
                int times = 1;
                // Rows of one rule share their id: its stages, or the rows of a table.
                for (String key = id; ; key = id + ", row " + ++times) {
                    if (rows.putIfAbsent(key, cells) == null) {
                        break;
                    }
                }
            }
        }
        return rows;
    }

    private static Map<String, Map<String, String>> leaves(JsonNode root) {
        Map<String, String> leaves = new TreeMap<>();
        collect("", root, leaves);
        Map<String, Map<String, String>> rules = new TreeMap<>();
        leaves.forEach((path, value) -> {
            String[] parts = path.substring(1).split("/", 2);
            rules.computeIfAbsent(parts[0], any -> new TreeMap<>()).put(parts.length > 1 ? parts[1] : "", value);
        });
        return rules;
    }

    private static void collect(String path, JsonNode node, Map<String, String> leaves) {
        if (node.isValueNode()) {
            leaves.put(path.isEmpty() ? "/" : path, node.asText());
        }
        node.properties().forEach(member -> collect(path + "/" + member.getKey(), member.getValue(), leaves));
        if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                collect(path + "/" + i, node.get(i), leaves);
            }
        }
    }

    private static Map<String, byte[]> files(byte[] zip) {
        Map<String, byte[]> files = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        } catch (IOException damaged) {
            throw new IllegalArgumentException("an archive this program did not write", damaged);
        }
        return files;
    }
}
