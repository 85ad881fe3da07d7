package org.holdproof.core.lesson;

import org.holdproof.core.heat.ThermalProperties;

/** A roast the lesson can put in the baths, with the published table that is for it. */
public enum Cut {
    BEEF("beef", Cut.MEAT, Cut.MEAT_TABLE),
    LAMB("lamb", Cut.MEAT, Cut.MEAT_TABLE),
    PORK("pork", Cut.MEAT, Cut.MEAT_TABLE),
    CHICKEN("chicken", Cut.POULTRY, "fsis-2021-chicken-7-log"),
    TURKEY("turkey", Cut.POULTRY, "fsis-2021-turkey-7-log");

    /** Thermal diffusivity behind the published bath times for meat, in m²/s (D. Baldwin 2012, from memory). */
    private static final double MEAT = 1.11e-7;
    /** The same for poultry. */
    private static final double POULTRY = 1.08e-7;
    /** In W/(m K): 95 W/(m² K) over the 198 1/m that reproduces the same published bath times. */
    private static final double CONDUCTIVITY = 0.48;

    private static final String MEAT_TABLE = "fsis-2021-meat-6.5-log";

    private final String species;
    private final double diffusivity;
    private final String tableId;

    Cut(String species, double diffusivity, String tableId) {
        this.species = species;
        this.diffusivity = diffusivity;
        this.tableId = tableId;
    }

    /** In the batch record's words. */
    public String species() {
        return species;
    }

    /** As it is printed: {@code beef roast}. */
    public String title() {
        return species + " roast";
    }

    /** Thermal diffusivity, in m²/s. */
    public double diffusivity() {
        return diffusivity;
    }

    ThermalProperties properties() {
        return ThermalProperties.constant(CONDUCTIVITY, diffusivity);
    }

    /** The published time-temperature table for it. */
    String tableId() {
        return tableId;
    }
}
