package org.holdproof.core.heat;

/**
 * The fastest core a described piece can have: a tenth thinner than declared, of the fastest shape the word covers, made
 * of water (α 1.6e-7 m²/s at 60 °C), its surface at the medium's temperature from the first moment. The tenth is worth
 * 23 per cent of diffusivity, so that every food of the published tables is slower.
 */
final class FastestCore {
    static final double HIGHEST_DIFFUSIVITY = 1.6e-7;
    static final double THINNER = 0.9;

    private final CentreResponse response;
    private final double fourierAMinute;

    FastestCore(Piece piece) {
        double half = THINNER * piece.halfThicknessMetres();
        response = CentreResponse.of(piece.fastestShapeFactor());
        fourierAMinute = HIGHEST_DIFFUSIVITY * 60 / (half * half);
    }

    /** Its temperature at ascending minutes, in °C, from one temperature throughout at minute 0. */
    double[] follow(double startCelsius, MediumSchedule medium, double[] atMinutes) {
        return response.follow(startCelsius, medium, fourierAMinute, atMinutes);
    }

    /**
     * The most it can rise or fall in a minute, in °C, whatever has happened before, while the surface stayed within a
     * spread of temperatures. (The centre is the surface's history weighted by the answer to a jump; its rate is weighted
     * by that answer's second derivative, whose rising and falling parts both come to the steepest of the answer.)
     */
    double steepestAMinute(double spreadCelsius) {
        return response.steepest() * fourierAMinute * spreadCelsius;
    }
}
