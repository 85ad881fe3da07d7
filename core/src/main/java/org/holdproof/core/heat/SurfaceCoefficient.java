package org.holdproof.core.heat;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;

/**
 * How readily heat passes between a medium and a surface, in W/(m² K), as published, measured or reckoned for one
 * medium.
 *
 * @param id the name it is asked for by
 * @param medium as it should be printed
 * @param low the low end of the range, where there is one
 * @param typical the usual figure; the middle of the range where none is named
 * @param high the high end of the range, where there is one
 * @param kind what sort of figure it is: measured, an engineering range, computed
 * @param sources the documents it rests on
 * @param how how the figures were obtained
 * @param note what to know about it, or empty
 */
public record SurfaceCoefficient(
        String id,
        String medium,
        OptionalDouble low,
        double typical,
        OptionalDouble high,
        String kind,
        List<Source> sources,
        How how,
        String note) {

    /**
     * The coefficient of this id.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static SurfaceCoefficient named(String id) {
        return all().stream()
                .filter(coefficient -> coefficient.id().equals(id))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("no surface coefficient is called " + id + "; there are "
                                + all().stream().map(SurfaceCoefficient::id).toList()));
    }

    /** Every medium the tables have a figure for. */
    public static List<SurfaceCoefficient> all() {
        return Loaded.ALL;
    }

    private static final class Loaded {
        static final List<SurfaceCoefficient> ALL = load();

        private static List<SurfaceCoefficient> load() {
            Map<String, Source> sources = HeatTable.sources();
            List<SurfaceCoefficient> all = new ArrayList<>();
            for (NamedCsvRecord row : HeatTable.rows("surface-coefficients.csv")) {
                all.add(read(row, sources));
            }
            return List.copyOf(all);
        }

        private static SurfaceCoefficient read(NamedCsvRecord row, Map<String, Source> sources) {
            List<Source> cited = new ArrayList<>();
            for (String id : row.getField("source_id").split(";", -1)) {
                Source source = sources.get(id);
                if (source == null) {
                    throw new IllegalStateException(
                            "surface-coefficients.csv cites " + id + ", which sources.json lacks");
                }
                cited.add(source);
            }
            OptionalDouble low = optional(row.getField("h_low"));
            OptionalDouble high = optional(row.getField("h_high"));
            OptionalDouble typical = optional(row.getField("h_typical"));
            return new SurfaceCoefficient(
                    row.getField("id"),
                    row.getField("medium"),
                    low,
                    typical.orElseGet(() -> (low.orElseThrow() + high.orElseThrow()) / 2),
                    high,
                    row.getField("kind"),
                    List.copyOf(cited),
                    HeatTable.how(row.getField("how")),
                    row.getField("note"));
        }

        private static OptionalDouble optional(String field) {
            return field.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(field));
        }
    }
}
