package org.holdproof.core.heat.smoke;

import java.util.Arrays;
import org.holdproof.core.heat.Conduction;
import org.holdproof.core.heat.Piece;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.ThermalProperties;

/**
 * What a smoke does to a piece whose size, food and air are known: slow, nominal and fast. Size and air unlike the stated
 * come on top. A prediction, for timing: no lethality follows from it, and no humidity at the surface.
 */
public final class SmokeForecast {
    /** Between two points of a curve, in minutes. */
    private static final double SPACING_MINUTES = 4;

    private static final double TOLERANCE_CELSIUS = 0.1;

    private final PieceTemperatures slow;
    private final PieceTemperatures nominal;
    private final PieceTemperatures fast;

    private SmokeForecast(PieceTemperatures slow, PieceTemperatures nominal, PieceTemperatures fast) {
        this.slow = slow;
        this.nominal = nominal;
        this.fast = fast;
    }

    /**
     * Reckons a smoke.
     *
     * @param start the piece when it goes in
     */
    public static SmokeForecast of(Piece piece, ThermalProperties properties, PieceState start, Smoke smoke) {
        Conduction conduction = Conduction.of(piece, properties).within(TOLERANCE_CELSIUS);
        double[] minutes = minutes(smoke);
        return new SmokeForecast(
                conduction.run(start, smoke.at(-1), minutes),
                conduction.run(start, smoke.at(0), minutes),
                conduction.run(start, smoke.at(1), minutes));
    }

    /**
     * The coldest the piece can be: its surface wet for ever. A bound, under the conditions of {@link SmokerSurface}, if the
     * piece is at least as thin and the air at least as hot as stated here.
     *
     * @param colderCelsius how much colder than stated the air may be
     */
    public static PieceTemperatures alwaysWet(
            Piece piece, ThermalProperties properties, PieceState start, Smoke smoke, double colderCelsius) {
        return Conduction.of(piece, properties)
                .within(TOLERANCE_CELSIUS)
                .run(start, smoke.alwaysWet(colderCelsius), minutes(smoke));
    }

    private static double[] minutes(Smoke smoke) {
        double end = smoke.minutes();
        int count = (int) Math.max(1, Math.ceil(end / SPACING_MINUTES));
        double[] minutes = new double[count + 1];
        Arrays.setAll(minutes, i -> i == count ? end : end * i / count);
        return minutes;
    }

    public PieceTemperatures slow() {
        return slow;
    }

    public PieceTemperatures nominal() {
        return nominal;
    }

    public PieceTemperatures fast() {
        return fast;
    }

    /** When the core comes to a temperature. */
    public Arrival coreReaches(double celsius) {
        return new Arrival(
                fast.minuteCoreReaches(celsius), nominal.minuteCoreReaches(celsius), slow.minuteCoreReaches(celsius));
    }
}
