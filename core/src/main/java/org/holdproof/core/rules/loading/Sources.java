package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;

/** The documents rules come from, and the citations drawn from them. */
public final class Sources {
    private static final List<String> FIELDS =
            List.of("id", "title", "issuer", "year", "edition", "section", "url", "how", "note", "readAt");

    /** What a rule may rest on. */
    private static final How[] DOCUMENTED = {How.READ, How.DERIVED, How.QUOTED, How.MEMORY, How.CONVENTION};

    private final Map<String, Source> byId = new LinkedHashMap<>();

    public static Sources read(TableFiles files) throws UnreadableInputException {
        Sources sources = new Sources();
        for (String file : files.ofTopic("sources", ".json")) {
            for (JsonValue entry : StrictJson.read(file, files.bytes(file), "a list of sources")
                    .items()) {
                sources.add(entry);
            }
        }
        return sources;
    }

    private void add(JsonValue entry) throws UnreadableInputException {
        entry.requireFields(FIELDS, List.of());
        Source source = new Source(
                entry.field("id").text(),
                entry.field("title").text(),
                entry.field("issuer").textOrEmpty(),
                entry.field("year").textOrEmpty(),
                entry.field("edition").textOrEmpty(),
                entry.field("section").textOrEmpty(),
                entry.field("url").textOrEmpty(),
                entry.field("how").choice(How.values()));
        if (byId.putIfAbsent(source.id(), source) != null) {
            throw entry.field("id").fault("an id of its own", "Give the source another id; this one is taken.");
        }
    }

    public Collection<Source> all() {
        return List.copyOf(byId.values());
    }

    /** The citation of a row with the columns source, document, section, how and note. */
    Citation citation(CsvRow row) throws UnreadableInputException {
        return citation(row, "");
    }

    /**
     * @param before text that goes ahead of the row's own note: the rule's conditions
     */
    Citation citation(CsvRow row, String before) throws UnreadableInputException {
        List<Source> cited = cited(row);
        return new Citation(
                cited.get(0),
                row.required("document"),
                row.text("section"),
                row.choice("how", DOCUMENTED),
                sentences(before, status(row), row.text("note"), alsoIn(cited)));
    }

    /** The citation of a row nothing is judged by, with the columns source, how and note: common practice will do. */
    Citation ofPrediction(CsvRow row) throws UnreadableInputException {
        List<Source> cited = cited(row);
        Source leading = cited.get(0);
        return new Citation(
                leading,
                leading.title(),
                Stream.of(leading.issuer(), leading.year())
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining(" ")),
                row.choice("how", How.values()),
                sentences(row.text("note"), alsoIn(cited)));
    }

    /** A table's citation as one of its rows states it anew; the table's own where the row says nothing. */
    Citation citation(CsvRow row, Citation table) throws UnreadableInputException {
        boolean same = row.isBlank("source") && row.isBlank("section") && row.isBlank("how") && row.isBlank("note");
        if (same) {
            return table;
        }
        return new Citation(
                row.isBlank("source") ? table.source() : cited(row).get(0),
                table.document(),
                row.isBlank("section") ? table.section() : row.text("section"),
                row.isBlank("how") ? table.how() : row.choice("how", DOCUMENTED),
                sentences(row.text("note"), table.note()));
    }

    private List<Source> cited(CsvRow row) throws UnreadableInputException {
        List<Source> cited = new ArrayList<>();
        for (String id : row.required("source").split(";", -1)) {
            Source source = byId.get(id);
            if (source == null) {
                throw row.fault(
                        "source", id, "the id of a source", "Add the document to sources.json, or correct the id.");
            }
            cited.add(source);
        }
        return cited;
    }

    /** Said only where the rule is not simply current. */
    private static String status(CsvRow row) {
        if (!row.has("status")
                || row.text("status").isEmpty()
                || row.text("status").equals("current")) {
            return "";
        }
        return "Status: " + row.text("status");
    }

    private static String alsoIn(List<Source> cited) {
        return cited.size() == 1
                ? ""
                : cited.stream().skip(1).map(Source::title).collect(Collectors.joining("; ", "Also in: ", ""));
    }

    private static String sentences(String... parts) {
        return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(". "));
    }
}
