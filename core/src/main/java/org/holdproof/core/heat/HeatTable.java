package org.holdproof.core.heat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;

/** The data files about heat and quality that ship with the reference tables. */
public final class HeatTable {
    private static final String FOLDER = "/org/holdproof/tables/heat/";

    private HeatTable() {}

    /** The rows of a file, as written. */
    public static List<NamedCsvRecord> rows(String name) {
        try (InputStream stream = open(name);
                CsvReader<NamedCsvRecord> reader =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }

    /** How a figure was obtained, from the words of a {@code how} column, the weakest word deciding. */
    public static How how(String words) {
        if (words.equals(How.COMMON_PRACTICE.title())) {
            return How.COMMON_PRACTICE;
        }
        if (words.contains("memory")) {
            return How.MEMORY;
        }
        return words.contains("computed") ? How.DERIVED : How.READ;
    }

    /** The documents the files cite, by their ids. */
    public static Map<String, Source> sources() {
        Map<String, Source> sources = new LinkedHashMap<>();
        try (InputStream stream = open("sources.json")) {
            for (JsonNode node : new ObjectMapper().readTree(stream)) {
                Source source = new Source(
                        node.path("id").asText(),
                        node.path("title").asText(),
                        node.path("issuer").asText(),
                        node.path("year").isNull() ? "" : node.path("year").asText(),
                        "",
                        "",
                        node.path("doi_url").asText(),
                        how(node.path("how").asText()));
                sources.put(source.id(), source);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return sources;
    }

    private static InputStream open(String name) {
        InputStream stream = HeatTable.class.getResourceAsStream(FOLDER + name);
        if (stream == null) {
            throw new IllegalStateException("the reference tables lack " + FOLDER + name);
        }
        return stream;
    }
}
