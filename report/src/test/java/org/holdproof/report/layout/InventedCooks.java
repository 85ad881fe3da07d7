package org.holdproof.report.layout;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.LongPredicate;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.batch.Stage.Kind;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.log.InventedLog;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.report.archive.AttachedFile;

/** Cooks in a kitchen that does not exist: each probe follows its surroundings with one time constant. Invented data. */
final class InventedCooks {
    static final String DIGEST = "5f0a1b2c3d4e5f60718293a4b5c6d7e8f9000102030405060708090a0b0c0d0e";
    static final ZoneId ZONE = ZoneId.of("America/Chicago");
    static final ZonedDateTime START = ZonedDateTime.of(2031, 3, 8, 6, 30, 0, 0, ZONE);

    private InventedCooks() {}

    /** What one cook does, in hours from its start. */
    record Plan(
            String batch,
            double bathCelsius,
            double bathEnds,
            double chillEnds,
            double chillTimeConstant,
            double smokeShare,
            LongPredicate readAtMinute) {}

    static ReportContent met(String authority) {
        return cook(new Plan("HK-0308", 61, 22, 29, 1.0, 0.66, minute -> true), authority);
    }

    static ReportContent lowBath(String authority) {
        return cook(new Plan("HK-0309", 50, 26, 33, 1.0, 0.5, minute -> true), authority);
    }

    static ReportContent lateChill(String authority) {
        return cook(new Plan("HK-0310", 61, 22, 33, 3.4, 0.66, minute -> true), authority);
    }

    static ReportContent gap(String authority) {
        return cook(
                new Plan("HK-0311", 58, 16, 23, 1.0, 0.57, minute -> minute < 6.5 * 60 || minute > 15.5 * 60),
                authority);
    }

    static ReportContent cook(Plan plan, String authority) {
        int minutes = (int) ((plan.chillEnds() + 18.5) * 60) + 1;
        List<Stage> stages = new ArrayList<>();
        stages.add(stage(Kind.SMOKE, 0, 6, 95));
        stages.add(moment(Kind.BAG, 6.1));
        stages.add(stage(Kind.BATH, 6.25, plan.bathEnds(), plan.bathCelsius()));
        stages.add(stage(Kind.CHILL, plan.bathEnds() + 0.1, plan.chillEnds(), 1));
        stages.add(stage(Kind.STORE, plan.chillEnds(), plan.chillEnds() + 17, 2));
        stages.add(stage(Kind.REHEAT, plan.chillEnds() + 17.05, plan.chillEnds() + 18.5, 78));
        stages.add(moment(Kind.SERVE, plan.chillEnds() + 18.5));
        long[] millis = new long[minutes];
        double[][] celsius = new double[4][minutes];
        Random noise = new Random(20310308);
        double[] core = {5, 5};
        double air = 20;
        int rows = 0;
        for (int minute = 0; minute < minutes; minute++) {
            double hour = minute / 60.0;
            double around = surroundings(stages, hour);
            boolean smoking = hour < 6;
            boolean chilling = hour >= plan.bathEnds() + 0.1 && hour < plan.chillEnds() + 17.05;
            double timeConstant =
                    smoking ? 2.2 : chilling ? plan.chillTimeConstant() : hour > plan.chillEnds() + 17 ? 0.4 : 1.1;
            double effective = smoking ? plan.smokeShare() * around : around;
            core[0] += (effective - core[0]) / (60 * timeConstant);
            core[1] += (effective - core[1]) / (60 * timeConstant * 0.9);
            air += (around - air) / 8;
            if (plan.readAtMinute().test(minute)) {
                millis[rows] =
                        START.toInstant().plus(Duration.ofMinutes(minute)).toEpochMilli();
                celsius[0][rows] = Math.round(10 * (core[0] + 0.05 * noise.nextGaussian())) / 10.0;
                celsius[1][rows] = Math.round(10 * (core[1] + 0.05 * noise.nextGaussian())) / 10.0;
                celsius[2][rows] =
                        hour >= 6.25 && hour < plan.bathEnds() ? around + 0.1 * noise.nextGaussian() : Double.NaN;
                celsius[3][rows] = hour < 6 || hour > plan.bathEnds() ? air + noise.nextGaussian() : Double.NaN;
                rows++;
            }
        }
        long[] read = java.util.Arrays.copyOf(millis, rows);
        ProbeLog log = InventedLog.of(
                "kitchen-log.csv",
                List.of("core 1", "core 2", "bath", "air"),
                read,
                celsius,
                List.of(new LogFault(
                        LogFault.Kind.MISSING_READING, "bath", 2, 376, "no reading in the cells; taken as missing")));
        return content(log, batch(plan.batch(), authority, stages), authority);
    }

    private static double surroundings(List<Stage> stages, double hour) {
        Instant now = START.toInstant().plusMillis(Math.round(hour * 3_600_000));
        double celsius = hour > 24 ? 2 : 20;
        for (Stage stage : stages) {
            if (stage.to().isPresent()
                    && !now.isBefore(stage.from())
                    && now.isBefore(stage.to().get())) {
                celsius = stage.setPointCelsius().orElse(celsius);
            }
        }
        return celsius;
    }

    static ReportContent content(ProbeLog log, BatchRecord batch, String authority) {
        RuleLibrary library = RuleLibrary.builtIn();
        AuthorityProfile profile = library.profile(authority).orElseThrow();
        Assessment assessment;
        try {
            assessment = Assessor.assess(log, batch, profile, library);
        } catch (ColumnMissingException impossible) {
            throw new IllegalStateException(impossible);
        }
        return content(assessment, log);
    }

    static ReportContent content(Assessment assessment, ProbeLog log) {
        return new ReportContent(
                assessment,
                log,
                List.of(
                        new AttachedFile("kitchen-log.csv", "the log as it came from the logger", DIGEST, 181_204),
                        new AttachedFile("batch.json", "the batch record", DIGEST.replace('5', 'a'), 2_311),
                        new AttachedFile(
                                "assessment.json", "every figure of this report", DIGEST.replace('0', 'b'), 9_120),
                        new AttachedFile("tables.zip", "the reference tables used", DIGEST.replace('1', 'c'), 40_877)),
                Optional.of(new SealFacts("Harbour Kitchen records", DIGEST.replace('e', '7'), Optional.empty())),
                START.toInstant().plus(Duration.ofDays(3).plusMinutes(95)));
    }

    static BatchRecord batch(String id, String authority, List<Stage> stages) {
        return new BatchRecord(
                id,
                new Kitchen("Harbour Kitchen", "Saltmarsh", ZONE),
                authority,
                new Product(
                        "Beef brisket, smoked",
                        Product.Species.BEEF,
                        "brisket flat",
                        Product.Form.INTACT,
                        OptionalDouble.of(18),
                        Product.Shape.ROAST,
                        OptionalDouble.of(65),
                        OptionalDouble.of(3.2),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()),
                new Instrument(
                        "Logger 7",
                        0.5,
                        Optional.of(new Instrument.InstrumentCheck(
                                LocalDate.of(2031, 3, 1),
                                Instrument.Method.ICE_POINT,
                                0.2,
                                OptionalDouble.empty(),
                                OptionalDouble.empty())),
                        OptionalDouble.of(30)),
                new ColumnRoles(List.of("core 1", "core 2"), List.of("bath"), List.of("air")),
                LogSettings.NONE,
                stages,
                new Roles("night cook", "kitchen manager"));
    }

    static Stage stage(Kind kind, double fromHour, double toHour, double setPoint) {
        return new Stage(kind, hour(fromHour), Optional.of(hour(toHour)), OptionalDouble.of(setPoint));
    }

    static Stage moment(Kind kind, double hour) {
        return new Stage(kind, hour(hour), Optional.empty(), OptionalDouble.empty());
    }

    static Instant hour(double hour) {
        return START.toInstant().plusMillis(Math.round(hour * 3_600_000));
    }
}
