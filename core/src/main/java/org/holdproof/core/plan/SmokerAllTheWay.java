package org.holdproof.core.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.heat.PieceTemperatures;
import org.holdproof.core.heat.smoke.Arrival;
import org.holdproof.core.heat.smoke.SmokeForecast;
import org.holdproof.core.quality.CookHistories;
import org.holdproof.core.quality.CookHistory;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quality.Smoking;
import org.holdproof.core.rules.TrimmedCut;

/**
 * The cook a bath is set beside: left bare in the smoker until the core is at a temperature. Compared in weight and
 * tenderness alone; nothing is said of its safety.
 *
 * @param airCelsius the smoker's air
 * @param coreCelsius when it comes out
 * @param outlook what it is likely to do
 * @param arrival when the core is there, in minutes; the likely one is known
 */
public record SmokerAllTheWay(double airCelsius, double coreCelsius, QualityOutlook outlook, Arrival arrival) {
    private static final double LONGEST_MINUTES = 36 * 60;

    /**
     * Reckons it for the piece of a planned cook.
     *
     * @throws UnplannableException if the air is no hotter than the core is to be, or the core never gets there
     */
    public static SmokerAllTheWay of(
            QualityModels models,
            PlannedCook cook,
            HeatFigures heat,
            Optional<TrimmedCut> cut,
            double airCelsius,
            double coreCelsius) {
        PlannedQuality.requireOwnCut(cook.species(), cut);
        if (!(airCelsius > coreCelsius)) {
            throw new UnplannableException("the smoker's air at " + PlannedCook.plain(airCelsius)
                    + " °C does not bring the core to " + PlannedCook.plain(coreCelsius) + " °C; expected hotter air");
        }
        SmokeForecast smoke =
                PlannedQuality.forecast(cook, heat, new SmokeStep(airCelsius, LONGEST_MINUTES).smoke(LONGEST_MINUTES));
        Arrival arrival = smoke.coreReaches(coreCelsius);
        if (arrival.likely().isEmpty()) {
            throw new UnplannableException("the core is not at " + PlannedCook.plain(coreCelsius) + " °C after "
                    + PlannedCook.plain(LONGEST_MINUTES / 60) + " h in air of " + PlannedCook.plain(airCelsius)
                    + " °C; expected hotter air or a cooler core");
        }
        CookHistories histories = new CookHistories(
                until(smoke.slow(), arrival.latest()),
                until(smoke.nominal(), arrival.likely()),
                until(smoke.fast(), arrival.earliest()));
        return new SmokerAllTheWay(
                airCelsius,
                coreCelsius,
                QualityOutlook.of(
                        models,
                        new QualityOutlook.Piece(cook.species(), cut, cook.thicknessMillimetres()),
                        histories,
                        new Smoking.ToTheEnd()),
                arrival);
    }

    private static CookHistory until(PieceTemperatures smoke, OptionalDouble minute) {
        double[] minutes = new double[smoke.size()];
        double[] mean = new double[smoke.size()];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = smoke.minute(i);
            mean[i] = smoke.meanCelsius(i);
        }
        return CookHistory.of(minutes, smoke.coreCelsius(), mean).until(minute.orElse(LONGEST_MINUTES));
    }
}
