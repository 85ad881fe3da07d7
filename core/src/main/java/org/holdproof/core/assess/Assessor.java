package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Product;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookTimeline;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.InstrumentStanding;
import org.holdproof.core.kinetics.GeneralMethod;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.ThermalDeath;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Curve;
import org.holdproof.core.verdict.LethalityMargin;
import org.holdproof.core.verdict.RecordFacts;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/** Judges one batch: its log, its record and the authority's rules in, every check with its verdict out. */
public final class Assessor {
    /** More points than a page can show; the curve is thinned to this. */
    private static final int CURVE_POINTS = 600;

    private Assessor() {}

    /**
     * Puts every question the batch gives occasion for to its log.
     *
     * @param library the tables the profile comes from
     * @throws ColumnMissingException if the record names a core column the log does not have
     */
    public static Assessment assess(ProbeLog log, BatchRecord batch, AuthorityProfile authority, RuleLibrary library)
            throws ColumnMissingException {
        InstrumentStanding standing = InstrumentStanding.of(batch.instrument());
        List<Trace> core = new ArrayList<>();
        for (int channel : coreChannels(log, batch)) {
            core.add(log.trace(channel).corrected(standing.correctionCelsius()));
        }
        Span span = new Span(log.millis(0), log.millis(log.rows() - 1));
        Evidence evidence = new Evidence(
                batch,
                authority,
                core,
                batch.instrument().toleranceCelsius(),
                new CookTimeline(batch, span),
                new Wording(authority.units(), batch.kitchen().zone()));

        ProbePlaceCheck.Findings probes = new ProbePlaceCheck(evidence, log).findings();
        List<Check> checks = checks(evidence, probes);
        List<LethalityMargin> margins = LethalityCheck.choice(authority, batch.product()).stream()
                .flatMap(choice -> choice.margin().stream())
                .flatMap(kinetics -> integrated(evidence, kinetics).stream())
                .toList();
        return new Assessment(
                checks.stream().map(Check::verdict).reduce(Verdict.MET, Verdict::and),
                batch,
                authority,
                library.edition(),
                span,
                checks,
                cautions(log, evidence, library, checks, probes),
                margins.stream().findFirst().map(found -> curve(evidence, found)),
                margins,
                ProbePlaceCheck.curve(probes),
                facts(log, evidence, standing));
    }

    /** Every question the batch gives occasion for, in the order a cook happens. */
    private static List<Check> checks(Evidence evidence, ProbePlaceCheck.Findings probes) {
        AuthorityProfile authority = evidence.authority();
        List<LethalityRow> rows = rows(evidence);
        List<Check> checks = new ArrayList<>(new RecordChecks(evidence).checks());
        ProbePlaceCheck.check(probes).ifPresent(checks::add);
        checks.addAll(new InterruptionCheck(evidence).checks());
        authority
                .comeUp()
                .flatMap(rule -> new ComeUpCheck(evidence, rule).check(rows))
                .ifPresent(checks::add);
        Check lethality = ProbePlaceCheck.trusted(new LethalityCheck(evidence).check(), probes);
        checks.add(lethality);
        new HumidityCheck(evidence, rows).check(lethality).ifPresent(checks::add);
        authority
                .lowCook()
                .flatMap(rule -> new LowCookCheck(evidence, rule).check())
                .ifPresent(checks::add);
        authority.seal().ifPresent(rule -> checks.addAll(new BagChecks(evidence, rule).checks()));
        HoldingChecks holding = new HoldingChecks(evidence);
        checks.addAll(holding.hot());
        new CoolingChecks(evidence)
                .checks().stream()
                        .map(check -> ProbePlaceCheck.trustedCooling(check, probes))
                        .forEach(checks::add);
        checks.addAll(holding.cold());
        new ShelfLifeChecks(evidence).check().ifPresent(checks::add);
        new TimeOnlyCheck(evidence).check().ifPresent(checks::add);
        authority.reheat().ifPresent(rule -> checks.addAll(new ReheatChecks(evidence, rule).checks()));
        return checks;
    }

    private static List<Caution> cautions(
            ProbeLog log, Evidence evidence, RuleLibrary library, List<Check> checks, ProbePlaceCheck.Findings probes) {
        List<Caution> cautions = new ArrayList<>(new RecordChecks(evidence).cautions(log));
        cautions.addAll(ProbePlaceCheck.cautions(probes));
        new InterruptionCheck(evidence).changeOver().ifPresent(cautions::add);
        HumidityCheck.dried(evidence).ifPresent(cautions::add);
        cautions.addAll(new ModelledGrowth(evidence, library).cautions(checks));
        cautions.addAll(new ShelfLifeChecks(evidence).useBy());
        ReheatChecks.again(evidence).ifPresent(cautions::add);
        return cautions;
    }

    private static List<Integer> coreChannels(ProbeLog log, BatchRecord batch) throws ColumnMissingException {
        List<Integer> channels = new ArrayList<>();
        for (String name : batch.columns().core()) {
            channels.add(log.channelNamed(name)
                    .orElseThrow(() -> new ColumnMissingException(
                            log.fileName(),
                            name,
                            log.channels().stream()
                                    .map(channel -> channel.name())
                                    .toList())));
        }
        return channels;
    }

    /** The rows that can make a cook lethal for this food. */
    private static List<LethalityRow> rows(Evidence evidence) {
        Product product = evidence.batch().product();
        return LethalityCheck.choice(evidence.authority(), product).stream()
                .flatMap(choice -> choice.tables().stream())
                .flatMap(table -> table.rowsFor(product.fatPercent()).stream())
                .toList();
    }

    private static Optional<LethalityMargin> integrated(Evidence evidence, ThermalDeath kinetics) {
        Optional<Span> cook = evidence.timeline().cook();
        return cook.flatMap(span -> evidence.within(span).stream()
                .filter(trace -> !trace.isEmpty())
                .map(trace -> new LethalityMargin(
                        kinetics,
                        trace.channel(),
                        new GeneralMethod(List.of(kinetics), evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                                .log10Reductions(trace)
                                .get(0)))
                .min(Comparator.comparingDouble(
                                (LethalityMargin found) -> found.log10().worst())
                        .thenComparingDouble(found -> found.log10().nominal())
                        .thenComparingDouble(found -> found.log10().best())));
    }

    private static Curve curve(Evidence evidence, LethalityMargin margin) {
        Trace trace = evidence.within(evidence.timeline().cook().orElseThrow()).stream()
                .filter(found -> found.channel().equals(margin.channel()))
                .findFirst()
                .orElseThrow();
        Bounded[] cumulative = new GeneralMethod(
                        List.of(margin.kinetics()), evidence.toleranceCelsius(), evidence.gapMinutes(trace))
                .cumulative(trace);
        List<Curve.Point> points = new ArrayList<>();
        int step = Math.max(1, trace.size() / CURVE_POINTS);
        for (int i = 0; i < trace.size(); i += step) {
            points.add(point(trace, cumulative, i));
        }
        if ((trace.size() - 1) % step != 0) {
            points.add(point(trace, cumulative, trace.size() - 1));
        }
        return new Curve(margin.kinetics().title(), "log10", points);
    }

    private static Curve.Point point(Trace trace, Bounded[] cumulative, int i) {
        return new Curve.Point(trace.millis(i), cumulative[i].worst(), cumulative[i].nominal(), cumulative[i].best());
    }

    private static RecordFacts facts(ProbeLog log, Evidence evidence, InstrumentStanding standing) {
        List<RecordFacts.Gap> gaps = new ArrayList<>();
        double median = 0;
        double limit = GapLimit.CEILING_MINUTES;
        for (Trace trace : evidence.core()) {
            double gapMinutes = GapLimit.minutes(trace, OptionalDouble.empty());
            median = Math.max(median, GapLimit.medianMinutes(trace));
            limit = Math.min(limit, gapMinutes);
            for (int i = 0; i + 1 < trace.size(); i++) {
                if (trace.minutesAfter(i) > gapMinutes) {
                    gaps.add(new RecordFacts.Gap(trace.channel(), new Span(trace.millis(i), trace.millis(i + 1))));
                }
            }
        }
        return new RecordFacts(
                log.rows(), median, limit, gaps, standing.correctionCelsius(), evidence.toleranceCelsius());
    }
}
