package org.holdproof.core.rules.loading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.holdproof.core.input.CsvRow;
import org.holdproof.core.input.CsvSheet;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.RuleSet;

/** Reads {@code lethality/index.csv} and the table beside it that each of its rows names. */
public final class LethalityFiles {
    private static final List<String> INDEX = List.of(
            "id",
            "title",
            "jurisdiction",
            "applies",
            "organism",
            "target_log10",
            "count",
            "source",
            "document",
            "section",
            "how",
            "note");
    private static final List<String> ROW = List.of(
            "temperature",
            "unit",
            "printed_other",
            "fat_percent",
            "printed_time",
            "seconds",
            "exception",
            "source",
            "section",
            "how",
            "note");
    private static final String FOLDER = "lethality";
    private static final double LONGEST_SECONDS = 30 * 86_400.0;

    private final TableFiles files;
    private final Sources sources;

    public LethalityFiles(TableFiles files, Sources sources) {
        this.files = files;
        this.sources = sources;
    }

    /** Something the print itself has, said in the row so that no slip of ours passes for it. */
    private enum PrintException {
        NONE,
        /** The other scale's printed figure is not the rounding of the exact conversion. */
        CONVERSION,
        /** The time is longer than at the temperature before. */
        RISES;

        static PrintException of(CsvRow row) throws UnreadableInputException {
            return row.isBlank("exception") ? NONE : row.choice("exception", values());
        }
    }

    public RuleSet<LethalityTable> read() throws UnreadableInputException {
        Map<String, LethalityTable> tables = new LinkedHashMap<>();
        List<String> unlisted = new ArrayList<>(files.inFolder(FOLDER));
        List<String> indexes = files.ofTopic(FOLDER + "/index", ".csv");
        unlisted.removeAll(indexes);
        for (String index : indexes) {
            for (CsvRow row : CsvSheet.read(index, files.bytes(index), INDEX)) {
                LethalityTable table = table(row);
                unlisted.remove(path(table.id()));
                row.putUnder(tables, table);
            }
        }
        if (!unlisted.isEmpty()) {
            throw Place.file(unlisted.get(0))
                    .fault(
                            "a table no index names",
                            "a row of lethality/index.csv or lethality/index-….csv with this id",
                            "Add lethality/index-site.csv with a row that names the table.");
        }
        return new RuleSet<>(LethalityTable.class, "Lethality tables", "lethality/index.csv", tables.values());
    }

    private static String path(String id) {
        return FOLDER + "/" + id + ".csv";
    }

    private LethalityTable table(CsvRow row) throws UnreadableInputException {
        String id = row.required("id");
        if (!files.has(path(id))) {
            throw row.fault("id", "a table at " + path(id), "Add that file, or correct the id.");
        }
        Citation citation = sources.citation(row);
        return new LethalityTable(
                id,
                row.required("title"),
                row.required("jurisdiction"),
                row.required("applies"),
                row.text("organism"),
                row.numberIfAny("target_log10", 0.1, 20),
                row.choice("count", LethalityTable.Counting.values()),
                rows(path(id), citation),
                citation);
    }

    private List<LethalityRow> rows(String file, Citation citation) throws UnreadableInputException {
        List<LethalityRow> rows = new ArrayList<>();
        Map<OptionalInt, LethalityRow> above = new LinkedHashMap<>();
        for (CsvRow csv : CsvSheet.read(file, files.bytes(file), ROW)) {
            PrintException exception = PrintException.of(csv);
            LethalityRow row = new LethalityRow(
                    csv.boundary("temperature", "unit", 40, 130),
                    csv.countIfAny("fat_percent", 0, 100),
                    csv.number("seconds", 0, LONGEST_SECONDS),
                    csv.required("printed_time"),
                    sources.citation(csv, citation));
            requirePrinted(csv, row, exception);
            if (!rows.isEmpty()) {
                requireOrder(csv, rows.get(rows.size() - 1), row);
            }
            requireNoRise(csv, Optional.ofNullable(above.put(row.fatPercent(), row)), row, exception);
            rows.add(row);
        }
        requireFullColumns(file, rows, above.size());
        return rows;
    }

    private static void requirePrinted(CsvRow csv, LethalityRow row, PrintException exception)
            throws UnreadableInputException {
        PrintedTime.require(csv, "printed_time", "seconds");
        String other = csv.text("printed_other");
        boolean rounds = other.isEmpty() || isRounding(csv.number("printed_other", -100, 500), other, row.at());
        if (!rounds && exception != PrintException.CONVERSION) {
            throw csv.fault(
                    "printed_other",
                    "the other scale's figure, rounded from " + row.at().text(),
                    "Correct the figure; where the document prints it so, write conversion in column exception.");
        }
        if (rounds && exception == PrintException.CONVERSION) {
            throw csv.fault("exception", "no exception here", "Empty the cell: the figure is the exact rounding.");
        }
    }

    private static boolean isRounding(double printed, String text, Boundary at) {
        TemperatureUnit other =
                at.unit() == TemperatureUnit.CELSIUS ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        int point = text.indexOf('.');
        int decimals = point < 0 ? 0 : text.length() - point - 1;
        double half = 0.5 * Math.pow(10, -decimals);
        return Math.abs(printed - other.fromCelsius(at.celsius())) <= half + TemperatureUnit.SLACK_CELSIUS;
    }

    private static void requireOrder(CsvRow csv, LethalityRow before, LethalityRow row)
            throws UnreadableInputException {
        if (before.at().unit() != row.at().unit()) {
            throw csv.fault("unit", "one scale in the whole table", "Keep figures of another scale in another table.");
        }
        boolean fatter = before.at().value() == row.at().value()
                && before.fatPercent().isPresent()
                && row.fatPercent().isPresent()
                && before.fatPercent().getAsInt() < row.fatPercent().getAsInt();
        if (!(before.at().value() < row.at().value()) && !fatter) {
            throw csv.fault(
                    "temperature",
                    "rows by rising temperature, within one temperature by rising fat, none twice",
                    "Sort the table, or take the repeated row out.");
        }
    }

    private static void requireNoRise(
            CsvRow csv, Optional<LethalityRow> colder, LethalityRow row, PrintException exception)
            throws UnreadableInputException {
        boolean rises = colder.isPresent() && row.seconds() > colder.get().seconds();
        if (rises && exception != PrintException.RISES) {
            throw csv.fault(
                    "seconds",
                    "no longer time than at "
                            + colder.map(LethalityRow::at).orElseThrow().text(),
                    "Correct the time; where the document prints it so, write rises in column exception.");
        }
        if (!rises && exception == PrintException.RISES) {
            throw csv.fault("exception", "no exception here", "Empty the cell: the time does not rise.");
        }
    }

    /** Every fat column must have every temperature: a missing cell would let a thinner one stand in for it. */
    private static void requireFullColumns(String file, List<LethalityRow> rows, int columns)
            throws UnreadableInputException {
        long temperatures =
                rows.stream().map(row -> row.at().value()).distinct().count();
        if (rows.size() != temperatures * columns) {
            throw Place.file(file)
                    .column("fat_percent")
                    .fault(
                            rows.size() + " rows for " + temperatures + " temperatures and " + columns + " fat columns",
                            "one row for each temperature and fat column",
                            "Fill the missing cells from the document.");
        }
    }
}
