package org.holdproof.core.plan;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.heat.Composition;
import org.holdproof.core.heat.HeatTable;
import org.holdproof.core.heat.SurfaceCoefficient;
import org.holdproof.core.heat.ThermalFit;
import org.holdproof.core.heat.ThermalProperties;

/**
 * How readily heat goes into a food and its bag, with the slow and fast ends of what has been published.
 *
 * @param conductivity in W/(m K); only its ratio to the coefficients matters
 * @param diffusivity reckoned with, in m²/s
 * @param slowDiffusivity the lowest that may hold, in m²/s
 * @param fastDiffusivity the highest, in m²/s
 * @param bathCoefficient reckoned with in the bath, in W/(m² K)
 * @param slowBathCoefficient the lowest reckoned with, in W/(m² K)
 * @param fitted whether they come from one logged cook
 * @param origin where the figures are from and how they were obtained, a sentence
 */
public record HeatFigures(
        double conductivity,
        double diffusivity,
        double slowDiffusivity,
        double fastDiffusivity,
        double bathCoefficient,
        double slowBathCoefficient,
        boolean fitted,
        String origin) {

    private static final double UNIT = 1e-7;

    /** @throws IllegalArgumentException if a figure is not positive or the diffusivities are out of order */
    public HeatFigures {
        boolean ordered = slowDiffusivity > 0 && slowDiffusivity <= diffusivity && diffusivity <= fastDiffusivity;
        boolean coefficients = slowBathCoefficient > 0 && slowBathCoefficient <= bathCoefficient;
        if (!ordered || !coefficients || !(conductivity > 0)) {
            throw new IllegalArgumentException("heat figures out of order or not positive");
        }
    }

    /**
     * The published figures: those behind the published bath-time tables are reckoned with; the range is that of the
     * measured values, its slow end lowered to what the composition allows, and where the fat is unknown to the slowest
     * composition held.
     *
     * @throws UnplannableException if none are held for that food
     */
    public static HeatFigures published(Species species, OptionalDouble fatPercent) {
        double reckoned = parameter(table(species), "alpha");
        double slow = reckoned;
        double fast = reckoned;
        for (NamedCsvRecord row : HeatTable.rows("thermal-properties.csv")) {
            if (row.getField("record").equals("published value") && isAbout(row.getField("food"), species)) {
                String[] ends = row.getField("alpha_1e-7_m2_s").split("-", -1);
                if (!ends[0].isEmpty()) {
                    slow = Math.min(slow, UNIT * Double.parseDouble(ends[0]));
                    fast = Math.max(fast, UNIT * Double.parseDouble(ends[ends.length - 1]));
                }
            }
        }
        slow = Math.min(
                slow, fatPercent.isPresent() ? inSeries(fatPercent.getAsDouble()) : slowestComposition(species, slow));
        double coefficient = SurfaceCoefficient.named("bath-stirred-published").typical();
        return new HeatFigures(
                ThermalFit.ASSUMED_CONDUCTIVITY,
                reckoned,
                slow,
                fast,
                coefficient,
                coefficient,
                false,
                String.format(
                        Locale.ROOT,
                        "Diffusivity %.2fe-7 m²/s (%.2f to %.2f) and %.0f W/(m² K): behind the published bath-time tables"
                                + " (Baldwin 2012), from memory, confirmed by reproducing them; range of measured"
                                + " values, mostly from memory%s",
                        reckoned / UNIT,
                        slow / UNIT,
                        fast / UNIT,
                        coefficient,
                        fatPercent.isPresent()
                                ? ", and of the composition (from memory; Choi and Okos 1986, in series)."
                                : ", and of the fattest composition held (Choi and Okos 1986, in series), as the fat is"
                                        + " not given."));
    }

    /**
     * The figures fitted to a logged cook of the same cut. The slow ends stay at least as slow as the published ones: a
     * fit never excuses a shorter cook.
     */
    public HeatFigures fittedBy(ThermalFit fit) {
        double estimate = fit.diffusivity().estimate();
        double coefficient = fit.surfaceCoefficient().estimate();
        return new HeatFigures(
                conductivity,
                estimate,
                Math.min(slowDiffusivity, fit.diffusivity().low()),
                Math.max(fastDiffusivity, fit.diffusivity().high()),
                coefficient,
                Math.min(slowBathCoefficient, coefficient),
                true,
                String.format(
                        Locale.ROOT,
                        "Diffusivity %.2fe-7 m²/s (%.2f to %.2f at 95 %%) and %.0f W/(m² K) fitted to %d readings of the"
                                + " log, for the thickness and shape its record declares; the covering time keeps the"
                                + " published slow end.",
                        estimate / UNIT,
                        fit.diffusivity().low() / UNIT,
                        fit.diffusivity().high() / UNIT,
                        coefficient,
                        fit.readings()));
    }

    private static String table(Species species) {
        if (species == Species.EGG_DISH || species == Species.PLANT_FOOD) {
            throw new UnplannableException("no published figures of how heat goes into " + species.title()
                    + " are held; expected meat, fish or shellfish");
        }
        if (species == Species.FISH || species == Species.SHELLFISH) {
            return "pasteurization-fish-lean";
        }
        return species.isPoultry() ? "pasteurization-poultry" : "pasteurization-meat";
    }

    private static double parameter(String table, String quantity) {
        return HeatTable.rows("published-tables/parameters.csv").stream()
                .filter(row -> row.getField("table").equals(table)
                        && row.getField("quantity").equals(quantity))
                .mapToDouble(row -> Double.parseDouble(row.getField("value")))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("parameters.csv lacks " + quantity + " of " + table));
    }

    /** Lowest of the compositions held for the species, heat crossing its parts in series; else the figure given. */
    private static double slowestComposition(Species species, double otherwise) {
        return HeatTable.rows("thermal-properties.csv").stream()
                .filter(row -> row.getField("record").equals("computed from composition"))
                .filter(row -> isOf(row.getField("food"), species))
                .mapToDouble(row -> UNIT * inSeries(row.getField("alpha_1e-7_m2_s")))
                .min()
                .orElse(otherwise);
    }

    /** The second figure of {@code 1.30 (parallel) 1.03 (series)}. */
    private static double inSeries(String both) {
        return Double.parseDouble(both.split(" ", -1)[2]);
    }

    private static boolean isOf(String food, Species species) {
        if (species == Species.FISH || species == Species.SHELLFISH) {
            return food.startsWith("salmon") || food.startsWith("cod");
        }
        if (species.isPoultry()) {
            return food.startsWith("chicken") || food.startsWith("turkey");
        }
        return species == Species.PORK ? food.startsWith("pork") : food.startsWith("beef");
    }

    private static boolean isAbout(String food, Species species) {
        List<String> words = species == Species.FISH || species == Species.SHELLFISH
                ? List.of("fish", "cod", "halibut")
                : species.isPoultry() ? List.of("chicken") : List.of("beef", "pork");
        return !food.contains("textbook")
                && words.stream().anyMatch(word -> food.equals(word) || food.startsWith(word + " "));
    }

    private static double inSeries(double fatPercent) {
        ThermalProperties slowest = Composition.ofMeat(fatPercent).properties(Composition.Path.SERIES);
        return Math.min(slowest.diffusivity(5), slowest.diffusivity(60));
    }
}
