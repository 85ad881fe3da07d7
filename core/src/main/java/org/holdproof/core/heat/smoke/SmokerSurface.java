package org.holdproof.core.heat.smoke;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.holdproof.core.heat.Exposure;
import org.holdproof.core.heat.HeatTable;
import org.holdproof.core.heat.ThermalProperties;
import org.holdproof.core.heat.Wetness;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;

/**
 * The surface of meat in a smoker, from slow to fast. Supply of heat and wetness cannot be told apart by a core's log, so
 * that one number, the pace, moves all of it together: −1 slow, 0 nominal, 1 fast. The three cover sixteen reported cooks
 * and three logs, not kitchens at large; slow is no proven worst.
 *
 * <p>The always-wet surface is a bound of physics: nothing that dries is colder than a wet surface in drier air with less
 * heat. It holds where the air is measured beside the piece, the piece stands alone and thawed, and nobody sprays or
 * bastes it.
 */
public final class SmokerSurface {
    private static final Map<String, NamedCsvRecord> ROWS = rows();
    private static final double SLOW = -1;
    private static final double FAST = 1;

    private SmokerSurface() {}

    private static Map<String, NamedCsvRecord> rows() {
        Map<String, NamedCsvRecord> rows = new LinkedHashMap<>();
        for (NamedCsvRecord row : HeatTable.rows("smoker-surface.csv")) {
            rows.put(row.getField("quantity"), row);
        }
        return rows;
    }

    public static Exposure slow() {
        return at(SLOW);
    }

    public static Exposure nominal() {
        return at(0);
    }

    public static Exposure fast() {
        return at(FAST);
    }

    /** The surface at a pace, also between and beyond slow and fast. */
    public static Exposure at(double pace) {
        return Exposure.of(
                value("convection", pace),
                value("emissivity", pace),
                value("humidity ratio", pace),
                new Wetness(value("half wet", pace), value("evaporable", pace)));
    }

    /** A surface that stays wet in dry, still air: the coldest a piece can be. */
    public static Exposure alwaysWet() {
        return Exposure.of(
                number("convection", "always_wet"),
                number("emissivity", "always_wet"),
                number("humidity ratio", "always_wet"),
                Wetness.FOR_EVER);
    }

    /** The food the surfaces were settled with: another belongs to other surfaces. */
    public static ThermalProperties food() {
        return ThermalProperties.constant(number("conductivity", "nominal"), number("diffusivity", "nominal"));
    }

    /** How readily heat goes into a wrapped piece at a pace, in W/(m² K); slow and fast are the ends. */
    public static double wrapped(double pace) {
        double nominal = number("wrapped", "nominal");
        double end = number("wrapped", pace < 0 ? "slow" : "fast");
        return nominal + Math.min(1, Math.abs(pace)) * (end - nominal);
    }

    /** The documents the figures rest on, each once. */
    public static List<Source> sources() {
        Map<String, Source> known = HeatTable.sources();
        List<Source> cited = new ArrayList<>();
        for (NamedCsvRecord row : ROWS.values()) {
            for (String id : row.getField("source_id").split(";", -1)) {
                Source source = known.get(id);
                if (source == null) {
                    throw new IllegalStateException("smoker-surface.csv cites " + id + ", which sources.json lacks");
                }
                if (!cited.contains(source)) {
                    cited.add(source);
                }
            }
        }
        return List.copyOf(cited);
    }

    /** How the weakest of the figures was obtained. */
    public static How how() {
        return ROWS.values().stream()
                .map(row -> HeatTable.how(row.getField("how")))
                .max(How::compareTo)
                .orElseThrow();
    }

    private static double value(String quantity, double pace) {
        double value = number(quantity, "nominal") * Math.pow(number(quantity, "factor"), pace);
        OptionalDouble limit = optional(quantity, "limit");
        return limit.isPresent() ? Math.min(limit.getAsDouble(), value) : value;
    }

    private static double number(String quantity, String column) {
        return optional(quantity, column)
                .orElseThrow(() -> new IllegalStateException("smoker-surface.csv lacks " + column + " of " + quantity));
    }

    private static OptionalDouble optional(String quantity, String column) {
        NamedCsvRecord row = ROWS.get(quantity);
        if (row == null || row.getField(column).isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Double.parseDouble(row.getField(column)));
    }
}
