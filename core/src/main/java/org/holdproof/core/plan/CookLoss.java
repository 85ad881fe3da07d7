package org.holdproof.core.plan;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.TemperatureUnit;

/**
 * What the cook is likely to cost in weight. No published table of loss by temperature could be read, only ranges by
 * doneness: a range, never a figure.
 *
 * @param lowPercent the least of the raw weight, in percent
 * @param highPercent the most, in percent; what portions are counted with
 * @param published the figures the range rests on; they govern
 * @param trade what cooks say of this case; {@link TradePractice#MARK}
 * @param tradeDiffers whether that lies outside the published range
 */
public record CookLoss(
        double lowPercent,
        double highPercent,
        List<PublishedQuality> published,
        Optional<TradePractice> trade,
        boolean tradeDiffers) {

    /** Which class of doneness a core belongs to is ours: the documents name none of these temperatures. */
    private static final double RARE_BELOW_CELSIUS = 60;

    private static final double FULLY_COOKED_FROM_CELSIUS = 71;
    private static final String COOK_LOSS = "cook loss";

    public CookLoss {
        published = List.copyOf(published);
    }

    /**
     * The published range for a core finished at a temperature.
     *
     * @return empty where nothing is published for the food at that temperature
     */
    public static Optional<CookLoss> at(Species species, double coreCelsius) {
        Optional<TradePractice> trade = species == Species.BEEF
                ? List.of(TradePractice.values()).stream()
                        .filter(practice -> practice.isAbout(TemperatureUnit.FAHRENHEIT.fromCelsius(coreCelsius)))
                        .findFirst()
                : Optional.empty();
        PublishedQuality full = row("full cooking");
        boolean redMeat = species.isRedMeat() || species == Species.GAME || species == Species.FARMED_GAME;
        if (coreCelsius >= FULLY_COOKED_FROM_CELSIUS) {
            return Optional.of(of(full, full, List.of(full), trade));
        }
        if (!redMeat) {
            return Optional.empty();
        }
        PublishedQuality rare = row("rare");
        return Optional.of(
                coreCelsius < RARE_BELOW_CELSIUS
                        ? of(rare, rare, List.of(rare), trade)
                        : of(rare, full, List.of(rare, full), trade));
    }

    private static CookLoss of(
            PublishedQuality least, PublishedQuality most, List<PublishedQuality> on, Optional<TradePractice> trade) {
        double low = ends(least)[0];
        double high = ends(most)[1];
        boolean differs = trade.isPresent()
                && (trade.get().lossPercent() < low || trade.get().lossPercent() > high);
        return new CookLoss(low, high, on, trade, differs);
    }

    private static PublishedQuality row(String condition) {
        return PublishedQuality.all().stream()
                .filter(row -> row.topic().equals(COOK_LOSS) && row.condition().equals(condition))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("quality.csv lacks the cook loss of " + condition));
    }

    private static double[] ends(PublishedQuality row) {
        String[] ends = row.value().split("-", -1);
        return new double[] {Double.parseDouble(ends[0]), Double.parseDouble(ends[ends.length - 1])};
    }

    /** The least that is left of a raw weight, in the same unit. */
    public double leastLeft(double rawWeight) {
        return rawWeight * (1 - highPercent / 100);
    }

    /** The most that is left of a raw weight, in the same unit. */
    public double mostLeft(double rawWeight) {
        return rawWeight * (1 - lowPercent / 100);
    }

    /**
     * Whole portions that are there even at the highest loss.
     *
     * @throws UnplannableException if a weight is not positive
     */
    public int portions(double rawKilograms, double portionKilograms) {
        if (!(rawKilograms > 0) || !(portionKilograms > 0)) {
            throw new UnplannableException("weights are more than nothing: " + rawKilograms + " kg raw, "
                    + portionKilograms + " kg a portion");
        }
        return (int) Math.floor(leastLeft(rawKilograms) / portionKilograms + 1e-9);
    }
}
