package org.holdproof.core.heat;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/** The parts of food whose properties Choi and Okos (1986) give as polynomials of temperature in °C. */
enum FoodPart {
    WATER,
    PROTEIN,
    FAT,
    CARBOHYDRATE,
    FIBRE,
    ASH;

    private record Polynomial(double constant, double linear, double square) {
        double at(double celsius) {
            return constant + celsius * (linear + celsius * square);
        }
    }

    private enum Property {
        CONDUCTIVITY("k"),
        DENSITY("rho"),
        SPECIFIC_HEAT("cp");

        private final String symbol;

        Property(String symbol) {
            this.symbol = symbol;
        }
    }

    /** In W/(m K). */
    double conductivity(double celsius) {
        return value(Property.CONDUCTIVITY, celsius);
    }

    /** In kg/m³. */
    double density(double celsius) {
        return value(Property.DENSITY, celsius);
    }

    /** In J/(kg K). */
    double specificHeat(double celsius) {
        return value(Property.SPECIFIC_HEAT, celsius);
    }

    private double value(Property property, double celsius) {
        return Polynomials.of(this, property).at(celsius);
    }

    private static final class Polynomials {
        private static final Map<Property, Map<FoodPart, Polynomial>> LOADED = load();

        static Polynomial of(FoodPart part, Property property) {
            Polynomial polynomial = LOADED.getOrDefault(property, Map.of()).get(part);
            if (polynomial == null) {
                throw new IllegalStateException("thermal-properties.csv lacks " + property + " of " + part);
            }
            return polynomial;
        }

        private static Map<Property, Map<FoodPart, Polynomial>> load() {
            Map<Property, Map<FoodPart, Polynomial>> loaded = new EnumMap<>(Property.class);
            for (NamedCsvRecord row : HeatTable.rows("thermal-properties.csv")) {
                for (Property property : Property.values()) {
                    for (FoodPart part : FoodPart.values()) {
                        if (isAbout(row, property, part)) {
                            loaded.computeIfAbsent(property, any -> new EnumMap<>(FoodPart.class))
                                    .put(part, read(row));
                        }
                    }
                }
            }
            return loaded;
        }

        private static boolean isAbout(NamedCsvRecord row, Property property, FoodPart part) {
            return row.getField("record").equals("component equation")
                    && row.getField("food").equals(part.name().toLowerCase(Locale.ROOT))
                    && row.getField("component_property").startsWith(property.symbol + " = ");
        }

        private static Polynomial read(NamedCsvRecord row) {
            return new Polynomial(HeatTable.number(row, "A"), HeatTable.number(row, "B"), HeatTable.number(row, "C"));
        }
    }
}
