package org.holdproof.core.heat;

import de.siegmar.fastcsv.reader.NamedCsvRecord;

/**
 * What a food is made of, in percent by weight. The parts a label or a food table leaves out may be missing; the rest is
 * scaled to a whole.
 *
 * @param water unfrozen
 */
public record Composition(double water, double protein, double fat, double carbohydrate, double fibre, double ash) {
    private static final double LEAST_TOTAL = 95;
    private static final double MOST_TOTAL = 105;

    /** @throws IllegalArgumentException if a part is negative or they add up to less than 95 or more than 105 percent */
    public Composition {
        double least = Math.min(Math.min(Math.min(water, protein), Math.min(fat, carbohydrate)), Math.min(fibre, ash));
        double total = water + protein + fat + carbohydrate + fibre + ash;
        if (!(least >= 0) || !(total >= LEAST_TOTAL) || !(total <= MOST_TOTAL)) {
            throw new IllegalArgumentException("a composition adds up to 100 % of parts none of them negative: water "
                    + water + ", protein " + protein + ", fat " + fat + ", carbohydrate " + carbohydrate + ", fibre "
                    + fibre + ", ash " + ash);
        }
    }

    /** Meat or fish: no carbohydrate to speak of. */
    public static Composition ofMeat(double water, double protein, double fat, double ash) {
        return new Composition(water, protein, fat, 0, 0, ash);
    }

    /**
     * Meat or fish of this fat; the lean is made of what {@code heat/composition.csv} says, a figure from memory.
     *
     * @param fatPercent fat by weight, in percent, 0 to 100
     */
    public static Composition ofMeat(double fatPercent) {
        NamedCsvRecord lean = HeatTable.rows("composition.csv").get(0);
        double share = (100 - fatPercent) / 100;
        return ofMeat(
                share * HeatTable.number(lean, "water_percent"),
                share * HeatTable.number(lean, "protein_percent"),
                fatPercent,
                share * HeatTable.number(lean, "ash_percent"));
    }

    /** How heat finds its way through the parts: the two bounds between which every real food lies. */
    public enum Path {
        /** Along all parts at once: the highest conductivity the composition allows. */
        PARALLEL,
        /** Through one part after another: the lowest. */
        SERIES
    }

    /**
     * Conductivity, density and specific heat after Choi and Okos, Effects of temperature and composition on the thermal
     * properties of foods (1986), whose polynomials hold from −40 to 150 °C; here from 0 °C, nothing frozen.
     */
    public ThermalProperties properties(Path path) {
        return new ComposedProperties(this, path);
    }

    /** The part's share of the weight, 0 to 1. */
    double fraction(FoodPart part) {
        double percent =
                switch (part) {
                    case WATER -> water;
                    case PROTEIN -> protein;
                    case FAT -> fat;
                    case CARBOHYDRATE -> carbohydrate;
                    case FIBRE -> fibre;
                    case ASH -> ash;
                };
        return percent / (water + protein + fat + carbohydrate + fibre + ash);
    }
}
