package org.holdproof.core.plan;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.heat.PieceState;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.smoke.Smoke;
import org.holdproof.core.heat.smoke.SmokeForecast;
import org.holdproof.core.heat.smoke.SmokerSurface;
import org.holdproof.core.quality.CookHistories;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.quality.QualityOutlook;
import org.holdproof.core.quality.Smoking;
import org.holdproof.core.quality.WeighedCook;
import org.holdproof.core.rules.TrimmedCut;

/** What a planned cook is likely to do to weight, tenderness and colour: smoked slowly, as likely and fast, then bathed. */
public final class PlannedQuality {
    private final QualityModels models;
    private final PlannedCook cook;
    private final Optional<TrimmedCut> cut;
    private final List<PieceInBath> pieces;

    private PlannedQuality(QualityModels models, PlannedCook cook, Optional<TrimmedCut> cut, List<PieceInBath> pieces) {
        this.models = models;
        this.cook = cook;
        this.cut = cut;
        this.pieces = List.copyOf(pieces);
    }

    /**
     * Reckons the cook's piece through its smoke and any bath.
     *
     * @param cut its cut and trim, if said; of the cook's species
     * @param bathMinutes the stays in the bath to be asked about, each more than none
     * @throws UnplannableException if the cut is another animal's
     */
    public static PlannedQuality of(
            QualityModels models, PlannedCook cook, HeatFigures heat, Optional<TrimmedCut> cut, double... bathMinutes) {
        requireOwnCut(cook.species(), cut);
        if (cook.smoke().isEmpty()) {
            return new PlannedQuality(models, cook, cut, List.of(PieceInBath.cold(cook, heat, bathMinutes)));
        }
        SmokeStep step = cook.smoke().get();
        SmokeForecast smoke = forecast(cook, heat, step.smoke(step.minutes()));
        return new PlannedQuality(
                models,
                cook,
                cut,
                List.of(
                        PieceInBath.smoked(smoke.slow(), cook, heat, bathMinutes),
                        PieceInBath.smoked(smoke.nominal(), cook, heat, bathMinutes),
                        PieceInBath.smoked(smoke.fast(), cook, heat, bathMinutes)));
    }

    /** The piece in a smoker, reckoned as the plan's own core is. */
    static SmokeForecast forecast(PlannedCook cook, HeatFigures heat, Smoke smoke) {
        return SmokeForecast.of(
                heat.fitted() ? cook.piece() : cook.piece().likely(),
                heat.fitted()
                        ? ThermalProperties.constant(heat.conductivity(), heat.diffusivity())
                        : SmokerSurface.food(),
                PieceState.uniform(cook.startCelsius()),
                smoke);
    }

    static void requireOwnCut(Species species, Optional<TrimmedCut> cut) {
        if (cut.isPresent() && !cut.get().species().equals(species.title())) {
            throw new UnplannableException(
                    "'" + cut.get().id() + "' is a cut of " + cut.get().species() + ", not of " + species.title()
                            + "; expected a cut of the same animal, or none");
        }
    }

    /** The histories with a bath of one set point for one of the stays asked about. */
    public CookHistories histories(double bathCelsius, double bathMinutes) {
        double end = cook.smokeMinutes() + bathMinutes;
        return whole(bathCelsius).each(history -> history.until(end));
    }

    private CookHistories whole(double bathCelsius) {
        return pieces.size() == 1
                ? CookHistories.known(pieces.get(0).in(bathCelsius))
                : new CookHistories(
                        pieces.get(0).in(bathCelsius),
                        pieces.get(1).in(bathCelsius),
                        pieces.get(2).in(bathCelsius));
    }

    /** What the cook is likely to do with a bath of one set point for one of the stays asked about. */
    public QualityOutlook outlook(double bathCelsius, double bathMinutes) {
        return outlooks(bathCelsius, bathMinutes).get(0);
    }

    /** The same for several of the stays asked about. */
    public List<QualityOutlook> outlooks(double bathCelsius, double... bathMinutes) {
        return QualityOutlook.after(
                models,
                piece(),
                whole(bathCelsius),
                smoking(),
                Arrays.stream(bathMinutes)
                        .map(stay -> cook.smokeMinutes() + stay)
                        .toArray());
    }

    /** The same after earlier cooks of the same cut were weighed or eaten. */
    public QualityOutlook outlookAfter(List<WeighedCook> earlier, double bathCelsius, double bathMinutes) {
        return outlook(bathCelsius, bathMinutes).narrowedBy(models, earlier);
    }

    private QualityOutlook.Piece piece() {
        return new QualityOutlook.Piece(cook.species(), cut, cook.thicknessMillimetres());
    }

    private Smoking smoking() {
        return cook.smoke()
                .<Smoking>map(step -> new Smoking.BeforeBag(step.minutes() / 60))
                .orElseGet(Smoking.None::new);
    }
}
