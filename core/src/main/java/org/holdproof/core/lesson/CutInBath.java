package org.holdproof.core.lesson;

import java.util.List;
import org.holdproof.core.batch.Product.Shape;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.MediumSchedule;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.SurfaceCoefficient;
import org.holdproof.core.log.Trace;

/** The simulated core of a cut that goes cold into one bath after another. */
final class CutInBath {
    /** Out of a cold store. */
    static final double START_CELSIUS = 5;

    private static final SurfaceCoefficient STIRRED = SurfaceCoefficient.named("bath-stirred-published");

    private final Conduction conduction;

    CutInBath(Cut cut, double thicknessMillimetres) {
        conduction = Conduction.of(Piece.of(thicknessMillimetres, Shape.ROAST), cut.properties());
    }

    /**
     * The core from minute 0 on.
     *
     * @param everyMinutes between readings
     */
    Trace core(List<Span> baths, double everyMinutes) {
        double end = baths.stream().mapToDouble(Span::minutes).sum();
        int size = (int) Math.floor(end / everyMinutes + 1e-9) + 1;
        double[] minutes = new double[size];
        long[] millis = new long[size];
        for (int i = 0; i < size; i++) {
            minutes[i] = Math.min(i * everyMinutes, end);
            millis[i] = Math.round(i * everyMinutes * 60_000);
        }
        MediumSchedule schedule = MediumSchedule.of(baths.stream()
                .map(bath -> MediumSchedule.Segment.hold(bath.minutes, bath.celsius, STIRRED.typical()))
                .toList());
        return new Trace(
                "core", millis, conduction.run(START_CELSIUS, schedule, minutes).coreCelsius());
    }

    /** Time in one bath. */
    record Span(double minutes, double celsius) {}
}
