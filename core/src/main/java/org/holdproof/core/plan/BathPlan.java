package org.holdproof.core.plan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.Trace;
import org.holdproof.core.plan.Pasteurization.RowTime;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Verdict;

/**
 * A bath planned. Minutes count from the start of the cook: the smoke, or the bath where there is none.
 *
 * @param heat what it was reckoned with
 * @param rule what the authority asks of the core
 * @param core the core as planned
 * @param slowest the core with everything at its slow end at once
 * @param safeMinute the earliest the core is safe, as planned
 * @param coveringMinute the earliest it is safe with everything at its slow end at once: what to plan by
 * @param outMinute when it comes out of the bath
 * @param variations one thing changed at a time
 * @param ranges limits on the heating
 * @param smoked what the smoke leaves, where there is a smoke step
 */
public record BathPlan(
        PlannedCook cook,
        HeatFigures heat,
        Pasteurization rule,
        CoreCurve core,
        CoreCurve slowest,
        double safeMinute,
        double coveringMinute,
        double outMinute,
        List<Variation> variations,
        List<TimeInRange> ranges,
        Optional<SmokedCore> smoked,
        ChillPlan chill)
        implements Plan {

    private static final double GENEROUS_START = 10;
    private static final double FRIDGE_CELSIUS = 5;
    private static final double LONGEST_CHILL_SHOWN = 240;
    private static final String CHANNEL = "core, reckoned";

    public BathPlan {
        variations = List.copyOf(variations);
        ranges = List.copyOf(ranges);
    }

    /** What may be otherwise than planned. */
    public enum Change {
        SLOW_SMOKE("slow smoke"),
        FAST_SMOKE("fast smoke"),
        THICKER("5 mm thicker"),
        THINNER("5 mm thinner"),
        SLOWER("slowest diffusivity"),
        FASTER("fastest diffusivity"),
        COOLER("bath 0.5 °C low");

        private final String title;

        Change(String title) {
            this.title = title;
        }

        /** In a few words, as printed. */
        public String title() {
            return title;
        }
    }

    /**
     * One thing otherwise than planned.
     *
     * @param safeMinute the earliest the core is then safe; empty: never
     */
    public record Variation(Change change, OptionalDouble safeMinute) {}

    /** Whether it may be cooked and served hot as it stands: every limit on the heating kept as planned, bounded at worst. */
    public boolean isSoundToServing() {
        return ranges.stream()
                .allMatch(range -> range.isKeptAsPlanned()
                        && Double.isFinite(range.minutes().worst()));
    }

    /** Whether the chill after it may stand as well: not missed as planned. */
    public boolean isSound() {
        return isSoundToServing()
                && chill.verdict().filter(verdict -> verdict == Verdict.NOT_MET).isEmpty();
    }

    /** The rows' times on the core as planned. */
    public List<RowTime> rows() {
        return rule.times(core);
    }

    /** The row met first as planned; empty where the rule is stated as kinetics. */
    public Optional<RowTime> firstRow() {
        return rule.first(core);
    }

    /** When to begin (the smoke, or the bath) to serve hot at an instant. */
    public Instant startBy(Instant serve) {
        return serve.minusMillis((long) Math.ceil(outMinute * 60_000));
    }

    /** When it goes into the bath. */
    public Instant bathFrom(Instant start) {
        return start.plusMillis(Math.round(cook.smokeMinutes() * 60_000));
    }

    /** When it comes out. */
    public Instant outAt(Instant start) {
        return start.plusMillis(Math.round(outMinute * 60_000));
    }

    /** When the core is down to 5 °C as planned, or has been in the chill for four hours. */
    public Instant chilledAt(Instant start) {
        return outAt(start).plusMillis(Math.round(chillMinutes() * 60_000));
    }

    private double chillMinutes() {
        return chill.core().fallsTo(FRIDGE_CELSIUS).orElse(LONGEST_CHILL_SHOWN);
    }

    /** The core as planned up to serving, as a log would show it. */
    public Trace traceToServing(Instant start) {
        return core.trace(CHANNEL, start.toEpochMilli(), outMinute);
    }

    /** The core as planned through bath and chill, as a log would show it. */
    public Trace trace(Instant start) {
        Trace heating = traceToServing(start);
        Trace cooling = chill.core().trace(CHANNEL, outAt(start).toEpochMilli(), chillMinutes());
        int heated = heating.size();
        long[] millis = new long[heated + cooling.size() - 1];
        double[] celsius = new double[millis.length];
        for (int i = 0; i < millis.length; i++) {
            boolean hot = i < heated;
            millis[i] = hot ? heating.millis(i) : cooling.millis(i - heated + 1);
            celsius[i] = hot ? heating.celsius(i) : cooling.celsius(i - heated + 1);
        }
        return new Trace(CHANNEL, millis, celsius);
    }

    /** The stages up to serving hot, as a batch record would name them. */
    public List<Stage> stagesToServing(Instant start) {
        List<Stage> stages = heating(start);
        stages.add(new Stage(Stage.Kind.SERVE, outAt(start), Optional.empty(), OptionalDouble.empty()));
        return stages;
    }

    /** The stages through the chill, as a batch record would name them. */
    public List<Stage> stages(Instant start) {
        List<Stage> stages = heating(start);
        stages.add(new Stage(
                Stage.Kind.CHILL,
                outAt(start),
                Optional.of(chilledAt(start)),
                OptionalDouble.of(chill.medium().celsius())));
        return stages;
    }

    private List<Stage> heating(Instant start) {
        List<Stage> stages = new ArrayList<>();
        cook.smoke()
                .ifPresent(smoke -> stages.add(new Stage(
                        Stage.Kind.SMOKE, start, Optional.of(bathFrom(start)), OptionalDouble.of(smoke.airCelsius()))));
        stages.add(new Stage(
                Stage.Kind.BATH, bathFrom(start), Optional.of(outAt(start)), OptionalDouble.of(cook.bathCelsius())));
        return stages;
    }

    /** How long it is in the bath, in minutes. */
    public double bathMinutes() {
        return outMinute - cook.smokeMinutes();
    }

    /** The rows in the order in which they are met; those never met are left out. */
    public List<RowTime> rowsAsMet() {
        return rows().stream()
                .filter(time -> time.metMinute().isPresent())
                .sorted(Comparator.comparingDouble(time -> time.metMinute().getAsDouble()))
                .toList();
    }

    /** What to know before acting on the plan. */
    public List<Caution> cautions() {
        PlanWording wording = new PlanWording(cook.authority().units());
        List<Caution> cautions = new ArrayList<>();
        if (heat.fitted()) {
            cautions.add(new Caution(
                    "fit",
                    "Reckoned as one logged cook heated. A wrong thickness or shape, or a probe off the centre, fits as"
                            + " well: the worst keeps to the published figures."));
        }
        if (cook.smoke().isPresent()) {
            cautions.add(new Caution(
                    "smoke",
                    "At worst the smoked surface stays wet for ever, as cold as a piece can be. That holds for a bare,"
                            + " thawed piece alone, not sprayed or basted, the air measured beside it and no more than "
                            + wording.difference(CookSimulation.SMOKER_CELSIUS)
                            + " below the plan's. What is reckoned proves nothing: log it."));
        }
        for (TimeInRange range : ranges) {
            if (range.verdict() != Verdict.MET) {
                cautions.add(new Caution(
                        "range-at-worst",
                        "At worst the core is longer in the range of "
                                + range.rule().id()
                                + " than its "
                                + PlanWording.time(range.rule().maxMinutes().orElse(0))
                                + ": log the core, and verify before serving."));
            }
        }
        if (cook.startCelsius() > GENEROUS_START) {
            cautions.add(
                    new Caution(
                            "warm-start",
                            "It starts at " + wording.temperature(cook.startCelsius())
                                    + ": how long it has been in the growth range is not known, so the come-up is not proven."));
        }
        if (cook.fatPercent().isEmpty()) {
            cautions.add(
                    new Caution("fat", "Fat not given: at worst the fattest cut held. Give it for a shorter time."));
        }
        if (cook.shape().isEmpty()) {
            cautions.add(new Caution("shape", "Shape not given: at worst a slab. Give it for a shorter time."));
        }
        if (cook.thicknessMillimetres() > 70) {
            cautions.add(new Caution(
                    "thick",
                    "Over 70 mm no published bath-time table was there to compare with; the equation is the same."));
        }
        cautions.add(
                new Caution(
                        "contact",
                        "Reckoned for a bag without air, covered by moving water on all sides, alone. Air or crowding slows it."));
        return List.copyOf(cautions);
    }
}
