package org.holdproof.core.course;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.StageProposal.Sureness;
import org.holdproof.core.log.Trace;

/**
 * Proposes the stages of a cook from what surrounded the food: the air of a smoker, the water of a bath, a chiller. A
 * proposal is never used unconfirmed. The levels are common practice, no source: a smoker runs above 80 °C, a bath from 45
 * to 95 °C and steadily, a chill has its medium below 12 °C while the core falls, a store has both cold.
 */
public final class StageProposals {
    private static final double SMOKER = 80;
    private static final double BATH_LOW = 45;
    private static final double BATH_HIGH = 95;
    private static final double COLD = 12;
    private static final double STORED = 8;
    /** A fall between two readings by which water shows that something cold went in, in °C, */
    private static final double DIP = 0.5;

    /** within this time of the smoker. */
    private static final long DIP_WITHIN_MILLIS = 60 * 60_000L;

    /** How far below its set point a bath, or a smoker, still stands at it, in °C. */
    private static final double NEAR_BATH = 1.5;

    private static final double NEAR_SMOKER = 12;

    /** A bath that takes more readings than this from its lowest level to its set point rises slowly. */
    private static final int SLOW_READINGS = 5;

    private static final long SHORTEST_MILLIS = 10 * 60_000L;

    private StageProposals() {}

    /**
     * The stages, in order of time.
     *
     * @param core the core's readings
     * @param bath the water's, where it was logged
     * @param air the air's, where it was logged
     */
    public static List<StageProposal> of(Trace core, Optional<Trace> bath, Optional<Trace> air) {
        if (core.size() < 2) {
            return List.of();
        }
        List<StageProposal> proposals = new ArrayList<>();
        air.flatMap(trace -> longest(trace, celsius -> celsius >= SMOKER))
                .ifPresent(run -> proposals.add(cook(Stage.Kind.SMOKE, run, air.orElseThrow(), "the air")));
        long smoked =
                proposals.isEmpty() ? core.firstMillis() : proposals.get(0).toMillis();
        Optional<Trace> water = bath.filter(trace -> !trace.isEmpty())
                .map(trace -> trace.between(smoked, Math.max(smoked, trace.lastMillis())))
                .filter(trace -> trace.size() > 1);
        water.flatMap(trace -> longest(trace, celsius -> celsius >= BATH_LOW && celsius <= BATH_HIGH))
                .ifPresent(run -> proposals.add(bath(run, water.orElseThrow())));
        if (proposals.size() == 2) {
            proposals.add(1, bagged(proposals.get(0), proposals.get(1)));
        }
        if (proposals.isEmpty()) {
            heated(core).ifPresent(proposals::add);
        }
        cooled(core, proposals).forEach(proposals::add);
        return proposals;
    }

    /** Readings of a medium that belong together, by their places in the trace. */
    private record Run(int first, int last) {}

    /** Tells whether a reading belongs. */
    private interface Level {
        boolean holds(double celsius);
    }

    /** The longest run at a level; a dip of less than ten minutes, such as an opened lid, does not end it. */
    private static Optional<Run> longest(Trace medium, Level level) {
        Optional<Run> best = Optional.empty();
        int first = -1;
        int last = -1;
        for (int i = 0; i < medium.size(); i++) {
            boolean inside = level.holds(medium.celsius(i));
            if (inside && (first < 0 || medium.millis(i) - medium.millis(last) > SHORTEST_MILLIS)) {
                first = i;
            }
            if (inside) {
                last = i;
                long length = medium.millis(last) - medium.millis(first);
                boolean longer = best.isEmpty()
                        || length
                                > medium.millis(best.get().last())
                                        - medium.millis(best.get().first());
                if (length >= SHORTEST_MILLIS && longer) {
                    best = Optional.of(new Run(first, last));
                }
            }
        }
        return best;
    }

    /** In water that was hot before, the food went in where the water first dipped, if it did. */
    private static StageProposal bath(Run run, Trace water) {
        if (run.first() > 0) {
            return cook(Stage.Kind.BATH, run, water, "the water");
        }
        int dip = 0;
        for (int i = 1; i <= run.last() && water.millis(i) - water.millis(0) <= DIP_WITHIN_MILLIS && dip == 0; i++) {
            dip = water.celsius(i) < water.celsius(i - 1) - DIP ? i : 0;
        }
        StageProposal whole = cook(Stage.Kind.BATH, new Run(Math.max(0, dip - 1), run.last()), water, "the water");
        return new StageProposal(
                whole.kind(),
                whole.fromMillis(),
                whole.toMillis(),
                whole.setPointCelsius(),
                dip > 0 ? Sureness.LIKELY : Sureness.DOUBTFUL,
                whole.why()
                        + (dip > 0
                                ? ", hot beforehand; it dipped there"
                                : ", hot beforehand: when the food went in it does not show"));
    }

    private static StageProposal cook(Stage.Kind kind, Run run, Trace medium, String what) {
        double[] inside = new double[run.last() - run.first() + 1];
        for (int i = 0; i < inside.length; i++) {
            inside[i] = medium.celsius(run.first() + i);
        }
        Arrays.sort(inside);
        double set = Math.round(inside[inside.length / 2] * 2) / 2.0;
        double spread = inside[inside.length * 9 / 10] - inside[inside.length / 10];
        boolean steady = spread <= (kind == Stage.Kind.BATH ? 2 : 40);
        // a probe follows its medium with a lag: the stage begins and ends where it stands at its level
        double near = kind == Stage.Kind.BATH ? NEAR_BATH : NEAR_SMOKER;
        int first = run.first();
        while (first < run.last() && medium.celsius(first) < set - near) {
            first++;
        }
        boolean slow = kind == Stage.Kind.BATH && first - run.first() > SLOW_READINGS;
        if (slow) {
            first = run.first();
        }
        int last = run.last();
        while (last > first && medium.celsius(last) < set - near) {
            last--;
        }
        return new StageProposal(
                kind,
                medium.millis(first),
                medium.millis(last),
                OptionalDouble.of(set),
                steady && !slow ? Sureness.CLEAR : Sureness.LIKELY,
                what + " stood about " + set + " °C" + (steady ? "" : ", unsteadily")
                        + (slow ? ", after rising slowly: when the food went in it does not show" : ""));
    }

    private static StageProposal bagged(StageProposal smoke, StageProposal bath) {
        long middle = (smoke.toMillis() + bath.fromMillis()) / 2;
        return new StageProposal(
                Stage.Kind.BAG,
                middle,
                middle,
                OptionalDouble.empty(),
                Sureness.DOUBTFUL,
                "somewhere between the smoker and the bath");
    }

    /** Without a medium, from where the core begins to rise to where it begins to fall for good. */
    private static Optional<StageProposal> heated(Trace core) {
        int hottest = 0;
        int coldestBefore = 0;
        for (int i = 1; i < core.size(); i++) {
            hottest = core.celsius(i) >= core.celsius(hottest) ? i : hottest;
        }
        for (int i = 0; i < hottest; i++) {
            coldestBefore = core.celsius(i) <= core.celsius(coldestBefore) + 0.3 ? i : coldestBefore;
        }
        double peak = core.celsius(hottest);
        if (peak < BATH_LOW) {
            return Optional.empty();
        }
        int end = hottest;
        while (end + 1 < core.size() && core.celsius(end + 1) > peak - 1.5) {
            end++;
        }
        return Optional.of(new StageProposal(
                Stage.Kind.BATH,
                core.millis(coldestBefore),
                core.millis(end),
                OptionalDouble.empty(),
                Sureness.DOUBTFUL,
                "the core rose and stayed hot; what heated it was not logged"));
    }

    /** A chill from the end of the heat until the core is cold, then a store. */
    private static List<StageProposal> cooled(Trace core, List<StageProposal> heats) {
        if (heats.isEmpty()) {
            return List.of();
        }
        long out = heats.get(heats.size() - 1).toMillis();
        Trace after = core.between(out, core.lastMillis());
        if (after.size() < 3 || after.celsius(after.size() - 1) > after.celsius(0) - 10) {
            return List.of();
        }
        int cold = 0;
        while (cold < after.size() && after.celsius(cold) > STORED) {
            cold++;
        }
        boolean reached = cold < after.size();
        long end = after.millis(Math.min(cold, after.size() - 1));
        List<StageProposal> cooling = new ArrayList<>();
        cooling.add(new StageProposal(
                Stage.Kind.CHILL,
                out,
                end,
                OptionalDouble.empty(),
                reached ? Sureness.CLEAR : Sureness.LIKELY,
                reached ? "the core fell to " + (int) STORED + " °C" : "the core was falling when the log ended"));
        if (reached && after.lastMillis() - end > 3 * SHORTEST_MILLIS && staysCold(after, cold)) {
            cooling.add(new StageProposal(
                    Stage.Kind.STORE,
                    end,
                    after.lastMillis(),
                    OptionalDouble.empty(),
                    Sureness.LIKELY,
                    "the core stayed cold"));
        }
        return cooling;
    }

    private static boolean staysCold(Trace trace, int from) {
        for (int i = from; i < trace.size(); i++) {
            if (trace.celsius(i) > COLD) {
                return false;
            }
        }
        return true;
    }
}
