package org.holdproof.core.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PlausibilityFinding;
import org.holdproof.core.heat.ProbePlausibility;
import org.holdproof.core.heat.ThermalFit;
import org.holdproof.core.heat.UnfitLogException;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;

/** An earlier cook of the same cut, from whose log the next one is planned. */
public final class LoggedCook {
    private static final long BEFORE_MILLIS = 15 * 60_000L;

    private LoggedCook() {}

    /**
     * How readily heat went into the logged piece: the slowest of its core probes.
     *
     * @throws UnfitLogException if the record or the log cannot tell; says what they lack
     */
    public static ThermalFit fit(ProbeLog log, BatchRecord batch) throws UnfitLogException {
        Stage bath = batch.first(Stage.Kind.BATH)
                .orElseThrow(() -> new UnfitLogException("the record of the logged cook names no bath"));
        Optional<Stage> smoke = batch.first(Stage.Kind.SMOKE);
        if (smoke.isPresent() && smoke.get().from().isBefore(bath.from())) {
            throw new UnfitLogException("the logged piece was smoked before its bath, so it did not go in at one"
                    + " temperature throughout; a fit needs a cook straight from the cold into the bath");
        }
        if (batch.product().thicknessMillimetres().isEmpty()) {
            throw new UnfitLogException("the record of the logged cook gives no thickness; add it to its product");
        }
        Piece piece = Piece.of(
                batch.product().thicknessMillimetres().getAsDouble(),
                batch.product().shape());
        Trace medium = bathTrace(log, batch);
        long immersed = bath.from().toEpochMilli();
        long out = bath.to().map(end -> end.toEpochMilli()).orElse(Long.MAX_VALUE);
        List<ThermalFit> fits = new ArrayList<>();
        for (String channel : batch.columns().core()) {
            Trace core = trace(log, channel).between(Long.MIN_VALUE, out);
            checkIsACore(core.between(immersed, out), medium.between(immersed, out), piece);
            fits.add(ThermalFit.of(piece, startCelsius(core, immersed), immersed, core, medium.between(0, out)));
        }
        return fits.stream()
                .min(Comparator.comparingDouble(fit -> fit.decayPerMinute().estimate()))
                .orElseThrow(() -> new UnfitLogException("the record of the logged cook names no core probe"));
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

    /** The mean of the core's readings in the last quarter of an hour before the immersion. */
    private static double startCelsius(Trace core, long immersed) throws UnfitLogException {
        Trace before = core.between(immersed - BEFORE_MILLIS, immersed);
        if (before.isEmpty()) {
            throw new UnfitLogException("the probe " + core.channel()
                    + " has no reading in the 15 min before the piece went into the bath, so its start temperature is not"
                    + " known");
        }
        double sum = 0;
        for (int i = 0; i < before.size(); i++) {
            sum += before.celsius(i);
        }
        return sum / before.size();
    }
}
