package org.holdproof.core.quality;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.Predicted;
import org.holdproof.core.rules.LossRange;
import org.holdproof.core.rules.TrimmedCut;

/**
 * What a cook is likely to do to a piece. A prediction from published spreads, for the kitchen alone: nothing here says
 * anything about safety.
 *
 * @param weight empty where nothing is published for the food
 * @param tenderness for beef alone
 * @param colour in words
 */
public record QualityOutlook(Optional<WeightLoss> weight, Optional<Tenderness> tenderness, List<String> colour) {
    /** A core is held from here up: what the model of loss was tested from. */
    private static final double HELD_FROM_CELSIUS = 50;

    /** A shorter hold was not tested. */
    private static final double HELD_MINUTES = 180;

    private static final String ANY_CUT = "any";

    public QualityOutlook {
        colour = List.copyOf(colour);
    }

    /**
     * The piece.
     *
     * @param cut its cut and trim; empty: any of the species
     * @param thicknessMillimetres across the thinnest way through the middle
     */
    public record Piece(Species species, Optional<TrimmedCut> cut, double thicknessMillimetres) {
        /** @throws IllegalArgumentException if the thickness is not positive or the cut is another animal's */
        public Piece {
            if (!(thicknessMillimetres > 0)) {
                throw new IllegalArgumentException("a thickness of " + thicknessMillimetres + " mm");
            }
            if (cut.isPresent() && !cut.get().species().equals(word(species))) {
                throw new IllegalArgumentException(cut.get().title() + " of " + species.title());
            }
        }

        private static String word(Species species) {
            return species.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        String speciesWord() {
            return word(species);
        }
    }

    /** What a cook does to a piece of which nothing was weighed before. */
    public static QualityOutlook of(QualityModels models, Piece piece, CookHistories cook, Smoking smoking) {
        return after(models, piece, cook, smoking, cook.likely().lastMinute()).get(0);
    }

    /**
     * The same for several ends of one cook.
     *
     * @param minutes when it may end; points of the histories, or straight between two
     */
    public static List<QualityOutlook> after(
            QualityModels models, Piece piece, CookHistories cook, Smoking smoking, double... minutes) {
        boolean beef = piece.species() == Species.BEEF;
        Optional<CookProgress> progress =
                beef ? Optional.of(new CookProgress(models, cook, piece.thicknessMillimetres())) : Optional.empty();
        return Arrays.stream(minutes)
                .mapToObj(minute -> {
                    CookHistory likely = cook.likely().until(minute);
                    double hottest = likely.hottestCoreCelsius();
                    return new QualityOutlook(
                            weight(models, piece, likely, progress.map(reckoned -> reckoned.lean(minute)), smoking),
                            progress.map(reckoned -> Tenderness.of(models, reckoned, minute, hottest)),
                            piece.species().isRedMeat() ? ColourWords.of(hottest, smoking) : List.of());
                })
                .toList();
    }

    private static Optional<WeightLoss> weight(
            QualityModels models, Piece piece, CookHistory likely, Optional<Predicted> lean, Smoking smoking) {
        double hottest = likely.hottestCoreCelsius();
        boolean held = isHeld(likely);
        Optional<CommonPractice> practice = lean.isPresent() ? CommonPractice.of(hottest, held) : Optional.empty();
        Optional<TrimmedCut> cut = piece.cut().or(() -> models.tables().cut(ANY_CUT));
        if (lean.isPresent() && held && cut.isPresent()) {
            return Optional.of(WeightLoss.Modelled.of(models, cut.get(), lean.get(), smoking, practice));
        }
        List<LossRange> ranges = models.ranges(piece.speciesWord(), hottest);
        return ranges.isEmpty() ? Optional.empty() : Optional.of(new WeightLoss.Published(ranges, practice));
    }

    /** Whether a core was hot for as long as the model of loss was tested for. */
    static boolean isHeld(CookHistory history) {
        return history.minutesAtOrAbove(HELD_FROM_CELSIUS) >= HELD_MINUTES;
    }

    /** The same cook after earlier ones of the same cut were weighed and eaten. */
    public QualityOutlook narrowedBy(QualityModels models, List<WeighedCook> earlier) {
        return new QualityOutlook(
                weight.map(loss -> loss instanceof WeightLoss.Modelled modelled
                        ? Narrowing.of(models, modelled, earlier)
                                .<WeightLoss>map(weighed -> weighed)
                                .orElse(loss)
                        : loss),
                tenderness.map(before -> TenderNeed.of(models, earlier)
                        .map(need -> before.needing(models, need))
                        .orElse(before)),
                colour);
    }
}
