package org.holdproof.report.layout;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Roles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.InventedLog;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.Source;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.RecordFacts;
import org.holdproof.core.verdict.Verdict;
import org.junit.jupiter.api.Named;

/** Reports nobody would make on purpose. Invented data. */
final class InventedExtremes {
    private static final String LONG =
            "a very long name that somebody in a hurry typed into a field meant for three words and which goes on ";

    private InventedExtremes() {}

    static Stream<Named<ReportContent>> all() {
        return Stream.of(
                Named.of("60 checks and 500 faults", full()),
                Named.of("one row and nothing else", bare()),
                Named.of("long names throughout", longNames()),
                Named.of("a reason longer than a page", longReason()),
                Named.of("32 probes with many gaps", manyProbes()),
                Named.of("characters the faces lack", foreign()));
    }

    static ReportContent full() {
        List<Check> checks = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            checks.add(check(
                    "check." + i,
                    "Question number " + i,
                    List.of(Verdict.values()).get(i % 3),
                    "Reason " + i + "."));
        }
        List<LogFault.Kind> kinds = List.of(LogFault.Kind.values());
        List<LogFault> faults = IntStream.range(0, 500)
                .mapToObj(i -> new LogFault(
                        kinds.get(i % kinds.size()),
                        i % 4 == 0 ? "" : "core",
                        i + 2,
                        i + 2 + i % 3,
                        "what was found in place " + i))
                .toList();
        return report(
                profile(2), batch("FULL-1", List.of("core")), log(List.of("core"), 300, faults), checks, List.of());
    }

    static ReportContent bare() {
        BatchRecord batch = new BatchRecord(
                "B",
                new Kitchen("K", "", ZoneId.of("UTC")),
                "none",
                new Product(
                        "x",
                        Product.Species.FISH,
                        "",
                        Product.Form.INTACT,
                        OptionalDouble.empty(),
                        Product.Shape.SLAB,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty()),
                new Instrument("t", 0, Optional.empty(), OptionalDouble.empty()),
                new ColumnRoles(List.of("core"), List.of(), List.of()),
                LogSettings.NONE,
                List.of(),
                new Roles("o", ""));
        Check figureless = Check.of("record.coverage", "Record covers the stages")
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_MOST)
                .why("There is one reading.")
                .build();
        ReportContent content =
                report(profile(1), batch, log(List.of("core"), 1, List.of()), List.of(figureless), List.of());
        return new ReportContent(content.assessment(), content.log(), List.of(), Optional.empty(), content.writtenAt());
    }

    static ReportContent longNames() {
        String name = LONG.repeat(3) + "x".repeat(300);
        BatchRecord plain =
                batch("L".repeat(150) + " " + LONG, List.of(LONG.repeat(2).strip()));
        BatchRecord batch = new BatchRecord(
                plain.batch(),
                new Kitchen(name, LONG, InventedCooks.ZONE),
                plain.authority(),
                new Product(
                        name,
                        Product.Species.OTHER_POULTRY,
                        LONG,
                        Product.Form.NON_INTACT,
                        OptionalDouble.of(12.5),
                        Product.Shape.SPHERE,
                        OptionalDouble.of(1234.5),
                        OptionalDouble.of(98.76),
                        OptionalDouble.of(120),
                        OptionalDouble.of(3.5)),
                new Instrument(LONG.strip(), 1.5, Optional.empty(), OptionalDouble.empty()),
                plain.columns(),
                plain.log(),
                plain.stages(),
                new Roles(LONG, LONG));
        List<Check> checks = List.of(
                check("lethality", name, Verdict.NOT_PROVEN, LONG.repeat(4).strip()),
                check("unbroken", "y".repeat(200), Verdict.NOT_MET, "z".repeat(400)));
        return report(
                profile(2),
                batch,
                log(List.of(LONG.repeat(2).strip()), 100, List.of()),
                checks,
                List.of(new Caution("long", LONG.repeat(5).strip())));
    }

    static ReportContent longReason() {
        String reason =
                "Sentence after sentence without an end in sight. ".repeat(400).strip();
        return report(
                profile(2),
                batch("R-1", List.of("core")),
                log(List.of("core"), 50, List.of()),
                List.of(check("endless", "Endless", Verdict.NOT_PROVEN, reason)),
                List.of());
    }

    static ReportContent manyProbes() {
        List<String> names =
                IntStream.rangeClosed(1, 32).mapToObj(i -> "core probe " + i).toList();
        ReportContent content = report(
                profile(2),
                batch("P-32", names),
                log(names, 4000, List.of()),
                List.of(check("lethality", "Core pasteurized", Verdict.MET, "Held.")),
                List.of());
        List<RecordFacts.Gap> gaps = IntStream.range(0, 80)
                .mapToObj(i ->
                        new RecordFacts.Gap(names.get(i % 2), new Span(minute(i * 40L), minute(i * 40L + 10 + i % 17))))
                .toList();
        Assessment old = content.assessment();
        Assessment gappy = new Assessment(
                old.verdict(),
                old.batch(),
                old.authority(),
                old.tablesEdition(),
                old.span(),
                old.checks(),
                old.cautions(),
                old.lethality(),
                old.integrated(),
                old.fastestCore(),
                new RecordFacts(4000, 1, 5, gaps, -0.4, 1));
        return InventedCooks.content(gappy, content.log());
    }

    static ReportContent foreign() {
        return report(
                profile(2),
                batch("燻製-7 🔥", List.of("core")),
                log(List.of("core"), 20, List.of()),
                List.of(check("foreign", "Nachweis für Geräuchertes: ≥ 57 °C", Verdict.MET, "Überall naß & heiß, 牛肉.")),
                List.of());
    }

    private static Check check(String id, String title, Verdict verdict, String why) {
        double worst = verdict == Verdict.MET ? 130.25 : 100.5;
        double best = verdict == Verdict.NOT_MET ? 105.75 : 140.125;
        Source source = new Source(
                "s",
                "Title of a document",
                "An issuer",
                "2021",
                "second edition",
                "",
                "https://example.org/doc",
                Source.How.READ);
        return Check.of(id, title)
                .required("core at or above 130 °F for 112 min")
                .citation(new Citation(
                        source,
                        "Document, second edition",
                        "table 2, page " + title.length(),
                        verdict == Verdict.NOT_PROVEN ? Source.How.MEMORY : Source.How.READ,
                        "a note on how it was read"))
                .verdict(verdict)
                .measured(new Bounded(worst, (worst + best) / 2, best))
                .limit(112)
                .comparison(Comparison.AT_LEAST)
                .unit("min")
                .why(why)
                .next("Do what " + id + " asks for, and write it down.")
                .channel("core")
                .window(new Span(minute(3), minute(17)))
                .build();
    }

    private static AuthorityProfile profile(int scales) {
        return AuthorityProfile.of(
                        "none",
                        "An authority that does not exist",
                        List.of(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT)
                                .subList(0, scales),
                        AuthorityProfile.Paper.A4)
                .left(List.of("how long it may be kept"))
                .build();
    }

    private static BatchRecord batch(String id, List<String> cores) {
        BatchRecord plain = InventedCooks.batch(
                id,
                "none",
                List.of(
                        new Stage(
                                Stage.Kind.SMOKE,
                                Instant.ofEpochMilli(minute(0)),
                                Optional.of(Instant.ofEpochMilli(minute(5))),
                                OptionalDouble.empty()),
                        new Stage(
                                Stage.Kind.BAG,
                                Instant.ofEpochMilli(minute(6)),
                                Optional.empty(),
                                OptionalDouble.empty()),
                        new Stage(
                                Stage.Kind.BATH,
                                Instant.ofEpochMilli(minute(6)),
                                Optional.empty(),
                                OptionalDouble.of(60))));
        return new BatchRecord(
                plain.batch(),
                plain.kitchen(),
                plain.authority(),
                plain.product(),
                plain.instrument(),
                new ColumnRoles(cores, List.of(), List.of()),
                plain.log(),
                plain.stages(),
                plain.roles());
    }

    private static ReportContent report(
            AuthorityProfile profile, BatchRecord batch, ProbeLog log, List<Check> checks, List<Caution> cautions) {
        Assessment assessment = new Assessment(
                checks.stream().map(Check::verdict).reduce(Verdict.MET, Verdict::and),
                batch,
                profile,
                "edition of no year",
                new Span(log.millis(0), log.millis(log.rows() - 1)),
                checks,
                cautions,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                new RecordFacts(log.rows(), 1, 5, List.of(), 0, 0.5));
        return InventedCooks.content(assessment, log);
    }

    private static ProbeLog log(List<String> names, int rows, List<LogFault> faults) {
        long[] millis = new long[rows];
        double[][] celsius = new double[names.size()][rows];
        for (int row = 0; row < rows; row++) {
            millis[row] = minute(row);
            for (int channel = 0; channel < names.size(); channel++) {
                celsius[channel][row] = 20 + 40 * Math.sin((row + 10 * channel) / 200.0);
            }
        }
        return InventedLog.of("log.csv", names, millis, celsius, faults);
    }

    private static long minute(long minutes) {
        return InventedCooks.START.toInstant().toEpochMilli() + minutes * 60_000;
    }
}
