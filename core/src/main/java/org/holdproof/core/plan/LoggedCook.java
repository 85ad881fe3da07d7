package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.heat.ConfidenceInterval;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PlausibilityFinding;
import org.holdproof.core.heat.ProbePlausibility;
import org.holdproof.core.heat.ThermalFit;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.heat.smoke.SmokeOutlook;
import org.holdproof.core.heat.smoke.SmokerSurface;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;

/** An earlier cook of the same cut, smoked or not, from whose log the next one is planned. */
public final class LoggedCook {
    private static final long BEFORE_MILLIS = 15 * 60_000L;

    /** Readings this long before the recorded immersion are before the true one, too. */
    private static final long LONG_BEFORE_MILLIS = 45 * 60_000L;

    /** How far the recorded time of immersion may be off, in minutes, and how far it usually is. */
    private static final double CLOCK_MINUTES = 15;

    private static final double CLOCK_SPREAD_MINUTES = 3;

    /** Three standard deviations, as a logarithm of likelihood. */
    private static final double CONTRADICTED = 4.5;

    /** No probe reads better than this, in °C. */
    private static final double LEAST_NOISE = 0.03;

    /** A thickness a tenth off moves the diffusivity by a fifth. */
    private static final double THICKNESS_ALLOWANCE = 1.25;

    private static final double WIDEST = 4;
    private static final double UNIT = 1e-7;

    private LoggedCook() {}

    /**
     * What the log tells.
     *
     * @param fit how readily heat went into the piece; empty: the published figures stay
     * @param notes what was replayed, what was not fitted and why, sentences
     */
    public record Learned(Optional<ThermalFit> fit, List<String> notes) {
        public Learned {
            notes = List.copyOf(notes);
        }
    }

    /**
     * How readily heat went into the logged piece: the slowest of its core probes. A smoke before the bath is replayed; the
     * recorded immersion may be off by some minutes.
     *
     * @throws UnfitLogException if the record or the log cannot tell; says what they lack
     */
    public static Learned learn(ProbeLog log, BatchRecord batch) throws UnfitLogException {
        Stage bath = batch.first(Stage.Kind.BATH)
                .orElseThrow(() -> new UnfitLogException("the record of the logged cook names no bath"));
        Optional<Stage> smoke =
                batch.first(Stage.Kind.SMOKE).filter(stage -> stage.from().isBefore(bath.from()));
        if (batch.product().thicknessMillimetres().isEmpty()) {
            throw new UnfitLogException("the record of the logged cook gives no thickness; add it to its product");
        }
        Piece piece = Piece.of(
                batch.product().thicknessMillimetres().getAsDouble(),
                batch.product().shape());
        Trace medium = bathTrace(log, batch);
        long immersed = bath.from().toEpochMilli();
        long out = bath.to().map(end -> end.toEpochMilli()).orElse(Long.MAX_VALUE);
        Trace core = slowest(log, batch, piece, medium, immersed, out);
        if (smoke.isEmpty()) {
            ThermalFit fit = shifted(piece, core, medium, immersed, startCelsius(core, immersed));
            requireFood(fit, batch);
            return new Learned(Optional.of(fit), List.of());
        }
        return smoked(log, batch, piece, core, medium, smoke.get().from().toEpochMilli(), immersed);
    }

    /** The core that lags furthest behind the bath: the coldest on average while it heats. */
    private static Trace slowest(ProbeLog log, BatchRecord batch, Piece piece, Trace medium, long immersed, long out)
            throws UnfitLogException {
        List<Trace> cores = new ArrayList<>();
        for (String channel : batch.columns().core()) {
            Trace core = trace(log, channel).between(Long.MIN_VALUE, out);
            checkIsACore(core.between(immersed, out), medium.between(immersed, out), piece);
            cores.add(core);
        }
        return cores.stream()
                .min(Comparator.comparingDouble(core -> meanCelsius(core.between(immersed, out))))
                .orElseThrow(() -> new UnfitLogException("the record of the logged cook names no core probe"));
    }

    private static double meanCelsius(Trace trace) {
        double sum = 0;
        for (int i = 0; i < trace.size(); i++) {
            sum += trace.celsius(i);
        }
        return sum / trace.size();
    }

    private static Learned smoked(
            ProbeLog log, BatchRecord batch, Piece piece, Trace core, Trace medium, long smokeFrom, long immersed)
            throws UnfitLogException {
        if (batch.columns().air().isEmpty()) {
            throw new UnfitLogException(
                    "the logged piece was smoked, and its record names no probe in the smoker's air,"
                            + " so that the smoke cannot be replayed");
        }
        Trace air = trace(log, batch.columns().air().get(0));
        SmokeOutlook replay = SmokeOutlook.of(
                new SmokeOutlook.Known(
                        piece.likely().shapeFactor(), OptionalDouble.of(piece.thicknessMillimetres()), 0.1),
                SmokerSurface.food(),
                core.between(smokeFrom, immersed),
                air,
                smokeFrom);
        PieceState bagged = replay.state();
        List<String> notes = new ArrayList<>();
        notes.add(String.format(
                Locale.ROOT,
                "Its smoke was replayed: the core at %.0f °C when bagged, %.0f °C reckoned, at pace %.1f on the line from"
                        + " slow (-1) to fast (1). The next smoke keeps the published spread: two pieces in one smoker"
                        + " differed by 0.3.",
                core.between(smokeFrom, immersed)
                        .celsius(core.between(smokeFrom, immersed).size() - 1),
                bagged.coreCelsius(),
                replay.pace()));
        try {
            ThermalFit fit = ThermalFit.of(piece, bagged, immersed, core, medium);
            requireFood(fit, batch);
            return new Learned(Optional.of(fit), notes);
        } catch (UnfitLogException unfit) {
            notes.add("Its bath was not fitted: " + unfit.getMessage() + ". The published figures stay.");
            return new Learned(Optional.empty(), notes);
        }
    }

    /**
     * The fit at the recorded immersion, unless the log contradicts it clearly; then at the one near it that suits the log
     * best. A shift and the surface's resistance look much alike, so that a little better is no reason.
     */
    private static ThermalFit shifted(Piece piece, Trace core, Trace medium, long immersed, double start)
            throws UnfitLogException {
        ThermalFit recorded = ThermalFit.of(piece, start, immersed, core, medium);
        double minutes = new BrentOptimizer(1e-3, 0.25)
                .optimize(
                        new MaxEval(60),
                        GoalType.MINIMIZE,
                        new UnivariateObjectiveFunction(
                                shift -> misfit(piece, core, medium, immersed, start, shift, recorded)),
                        new SearchInterval(-CLOCK_MINUTES, CLOCK_MINUTES, 0))
                .getPoint();
        boolean contradicted = misfit(piece, core, medium, immersed, start, minutes, recorded) < -CONTRADICTED;
        return contradicted
                ? ThermalFit.of(piece, PieceState.uniform(start), immersed, minutes, core, medium)
                : recorded;
    }

    private static double misfit(
            Piece piece, Trace core, Trace medium, long immersed, double start, double shift, ThermalFit recorded) {
        double usual = shift / CLOCK_SPREAD_MINUTES;
        try {
            ThermalFit fit = ThermalFit.of(piece, PieceState.uniform(start), immersed, shift, core, medium);
            double each =
                    Math.max(fit.residualCelsius(), LEAST_NOISE) / Math.max(recorded.residualCelsius(), LEAST_NOISE);
            return recorded.readings() * Math.log(each) + usual * usual / 2;
        } catch (UnfitLogException unfit) {
            return 1e9 * (1 + Math.abs(shift));
        }
    }

    private static void requireFood(ThermalFit fit, BatchRecord batch) throws UnfitLogException {
        HeatFigures published = HeatFigures.published(batch.product().species(), OptionalDouble.empty());
        ConfidenceInterval found = fit.diffusivity();
        if (!(found.high() <= WIDEST * found.low())) {
            throw new UnfitLogException(String.format(
                    Locale.ROOT,
                    "the log does not bound the diffusivity (%.2f to %.2fe-7 m²/s); it needs the core's rise from the"
                            + " immersion on, with the times as they were",
                    found.low() / UNIT,
                    found.high() / UNIT));
        }
        double lowest = published.slowDiffusivity() / THICKNESS_ALLOWANCE;
        double highest = published.fastDiffusivity() * THICKNESS_ALLOWANCE;
        if (!(found.estimate() >= lowest) || !(found.estimate() <= highest)) {
            throw new UnfitLogException(String.format(
                    Locale.ROOT,
                    "the log asks for a diffusivity of %.2fe-7 m²/s; food of this kind has %.2f to %.2f. The thickness, the"
                            + " shape, the place of the probe or the times of the record are not as they were",
                    found.estimate() / UNIT,
                    published.slowDiffusivity() / UNIT,
                    published.fastDiffusivity() / UNIT));
        }
    }

    private static void checkIsACore(Trace core, Trace medium, Piece piece) throws UnfitLogException {
        PlausibilityFinding finding = ProbePlausibility.judge(core, Optional.of(medium), piece);
        if (finding.outcome().isImpossible()) {
            throw new UnfitLogException(
                    "the probe " + core.channel() + " cannot have been in the core: " + finding.why());
        }
    }

    private static Trace bathTrace(ProbeLog log, BatchRecord batch) throws UnfitLogException {
        if (batch.columns().bath().isEmpty()) {
            throw new UnfitLogException(
                    "the record of the logged cook names no bath probe; a fit needs the bath's own log beside the core's");
        }
        return trace(log, batch.columns().bath().get(0));
    }

    private static Trace trace(ProbeLog log, String channel) throws UnfitLogException {
        int column = log.channelNamed(channel)
                .orElseThrow(() -> new UnfitLogException(
                        "the log " + log.fileName() + " has no column '" + channel + "', which its record names"));
        return log.trace(column);
    }

    /** The mean of the core's readings well before the recorded immersion, or else in the last quarter of an hour. */
    private static double startCelsius(Trace core, long immersed) throws UnfitLogException {
        Trace wellBefore = core.between(immersed - LONG_BEFORE_MILLIS, immersed - BEFORE_MILLIS);
        Trace before = wellBefore.isEmpty() ? core.between(immersed - BEFORE_MILLIS, immersed) : wellBefore;
        if (before.isEmpty()) {
            throw new UnfitLogException("the probe " + core.channel()
                    + " has no reading in the 15 min before the piece went into the bath, so its start temperature is not"
                    + " known");
        }
        return meanCelsius(before);
    }
}
