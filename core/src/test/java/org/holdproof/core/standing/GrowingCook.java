package org.holdproof.core.standing;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.assess.Cooks;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;

/**
 * An invented cook whose log can be cut after any row, read from text as a user's would be. Minutes count from
 * 1970-01-01T00:00Z.
 *
 * @param rows minute, then a reading in °C of each probe, then one of what heats or chills it where that is logged
 */
record GrowingCook(
        List<double[]> rows,
        boolean mediumLogged,
        String authority,
        double toleranceCelsius,
        double thicknessMillimetres,
        List<Stage> stages) {
    static final RuleLibrary LIBRARY = RuleLibrary.builtIn();

    /** So thin that its core may follow any of the straight lines. */
    private static final double THIN_MILLIMETRES = 12;

    GrowingCook {
        rows = List.copyOf(rows);
        stages = List.copyOf(stages);
    }

    /** One probe read every minute along straight lines: minute and °C of each corner. */
    static GrowingCook along(String authority, double toleranceCelsius, List<Stage> stages, double... corners) {
        List<double[]> rows = new ArrayList<>();
        for (int corner = 0; corner + 3 < corners.length; corner += 2) {
            double from = corners[corner];
            double to = corners[corner + 2];
            for (double minute = from; minute < to; minute++) {
                double share = (minute - from) / (to - from);
                rows.add(new double[] {minute, corners[corner + 1] + share * (corners[corner + 3] - corners[corner + 1])
                });
            }
        }
        rows.add(new double[] {corners[corners.length - 2], corners[corners.length - 1]});
        return new GrowingCook(rows, false, authority, toleranceCelsius, stages);
    }

    /** As a thin piece's. */
    GrowingCook(
            List<double[]> rows, boolean mediumLogged, String authority, double toleranceCelsius, List<Stage> stages) {
        this(rows, mediumLogged, authority, toleranceCelsius, THIN_MILLIMETRES, stages);
    }

    int probes() {
        return rows.get(0).length - (mediumLogged ? 2 : 1);
    }

    AuthorityProfile profile() {
        return LIBRARY.profile(authority).orElseThrow();
    }

    ProbeLog log(int count) throws Exception {
        StringBuilder csv = new StringBuilder("time");
        for (int p = 0; p < probes(); p++) {
            csv.append(",P").append(p).append(" °C");
        }
        csv.append(mediumLogged ? ",medium °C" : "");
        for (double[] row : rows.subList(0, count)) {
            csv.append('\n').append(Instant.ofEpochMilli(Math.round(row[0] * 60_000)));
            for (int cell = 1; cell < row.length; cell++) {
                csv.append(String.format(Locale.ROOT, ",%.9f", row[cell]));
            }
        }
        return LogReader.read(
                "invented.csv",
                new ByteArrayInputStream(csv.append('\n').toString().getBytes(StandardCharsets.UTF_8)),
                LogSettings.NONE);
    }

    BatchRecord record() {
        BatchRecord batch = Cooks.batch(authority, Cooks.beef(thicknessMillimetres), stages.toArray(Stage[]::new));
        List<String> core = new ArrayList<>();
        for (int p = 0; p < probes(); p++) {
            core.add("P" + p);
        }
        return new BatchRecord(
                batch.batch(),
                batch.kitchen(),
                authority,
                batch.product(),
                new Instrument("T", toleranceCelsius, batch.instrument().lastCheck(), OptionalDouble.empty()),
                mediumLogged
                        ? new ColumnRoles(core, List.of("medium"), List.of("medium"))
                        : new ColumnRoles(core, List.of(), List.of()),
                batch.log(),
                batch.stages(),
                batch.roles());
    }

    /** Where it stands after so many rows. */
    Standing after(int count) throws Exception {
        return Standing.of(log(count), record(), profile(), LIBRARY);
    }

    /** Where it stands at the end of its rows. */
    Standing now() throws Exception {
        return after(rows.size());
    }

    /** The judgement of the whole log. */
    Assessment whole() throws Exception {
        return Assessor.assess(log(rows.size()), record(), profile(), LIBRARY);
    }
}
