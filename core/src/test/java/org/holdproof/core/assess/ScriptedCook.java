package org.holdproof.core.assess;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;

/** A cook written down in a line: series of minute:celsius joined by straight lines, and stages. Invented data. */
record ScriptedCook(String authority, Product product, List<double[]> rows, List<String> columns, BatchRecord record) {
    private static final Pattern STAGE = Pattern.compile(
            "(smoke|bath|hot hold|chill|store|reheat|freeze|time only|bag|serve) ([0-9]+)(?:-([0-9]+))?(?: ([0-9.]+)C)?");

    static ScriptedCook of(
            String authority, Product.Species species, Product.Form form, String series, String stages, String end) {
        Product product = new Product(
                "test piece, brisket",
                species,
                "brisket",
                form,
                OptionalDouble.empty(),
                Product.Shape.SLAB,
                OptionalDouble.of(20),
                OptionalDouble.of(2),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        List<double[]> rows = new ArrayList<>();
        double[] before = null;
        for (String point : series.strip().split(" ", -1)) {
            double[] now = {
                Double.parseDouble(point.substring(0, point.indexOf(':'))),
                Double.parseDouble(point.substring(point.indexOf(':') + 1))
            };
            if (before == null) {
                rows.add(now);
            } else {
                for (double minute = before[0] + 1; minute <= now[0]; minute++) {
                    double share = (minute - before[0]) / (now[0] - before[0]);
                    rows.add(new double[] {minute, before[1] + share * (now[1] - before[1])});
                }
            }
            before = now;
        }
        List<Stage> list = new ArrayList<>();
        for (String text : stages.split("; ", -1)) {
            Matcher stage = STAGE.matcher(text.strip());
            if (!stage.matches()) {
                throw new IllegalArgumentException(text);
            }
            Stage.Kind kind = java.util.Arrays.stream(Stage.Kind.values())
                    .filter(found -> found.title().equals(stage.group(1)))
                    .findFirst()
                    .orElseThrow();
            list.add(new Stage(
                    kind,
                    at(stage.group(2)),
                    Optional.ofNullable(stage.group(3)).map(ScriptedCook::at),
                    stage.group(4) == null
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(Double.parseDouble(stage.group(4)))));
        }
        Optional<Ending> ending = end.isEmpty()
                ? Optional.empty()
                : Optional.of(new Ending(
                        java.util.Arrays.stream(Ending.How.values())
                                .filter(how -> end.startsWith(how.title()))
                                .findFirst()
                                .orElseThrow(),
                        at(end.substring(end.lastIndexOf(' ') + 1))));
        BatchRecord record = new BatchRecord(
                "T-1",
                new Kitchen("Test kitchen", "", ZoneOffset.UTC),
                authority,
                product,
                new Instrument(
                        "T",
                        0.2,
                        Optional.of(new Instrument.InstrumentCheck(
                                LocalDate.of(1970, 1, 1),
                                Instrument.Method.ICE_POINT,
                                0,
                                OptionalDouble.empty(),
                                OptionalDouble.empty())),
                        OptionalDouble.empty()),
                new ColumnRoles(List.of("Core"), List.of(), List.of()),
                LogSettings.NONE,
                list,
                new Roles("cook", ""),
                "",
                ending);
        return new ScriptedCook(authority, product, rows, List.of("Core"), record);
    }

    private static Instant at(String minute) {
        return Instant.ofEpochMilli(Math.round(Double.parseDouble(minute) * 60_000));
    }

    ScriptedCook with(BatchRecord other) {
        return new ScriptedCook(authority, product, rows, columns, other);
    }

    ScriptedCook withRows(List<double[]> others) {
        return new ScriptedCook(authority, product, others, columns, record);
    }

    Assessment assess() {
        StringBuilder csv = new StringBuilder("time");
        columns.forEach(name -> csv.append(',').append(name).append(" °C"));
        for (double[] row : rows) {
            csv.append('\n').append(Instant.ofEpochMilli(Math.round(row[0] * 60_000)));
            for (int i = 1; i < row.length; i++) {
                csv.append(',').append(Double.isNaN(row[i]) ? "" : String.format(Locale.ROOT, "%.4f", row[i]));
            }
        }
        csv.append('\n');
        try {
            ProbeLog log = LogReader.read(
                    "invented.csv",
                    new ByteArrayInputStream(csv.toString().getBytes(StandardCharsets.UTF_8)),
                    LogSettings.NONE);
            RuleLibrary library = RuleLibrary.builtIn();
            return Assessor.assess(log, record, library.profile(authority).orElseThrow(), library);
        } catch (Exception e) {
            throw new AssertionError(record.toString(), e);
        }
    }
}
