package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.batch.Kitchen;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Roles;

/** Prints what a batch record says. */
final class BatchWords {
    private static final double GRAMS_PER_POUND = 453.59237;

    private BatchWords() {}

    /** Name, animal and cut, form. */
    static String product(Product product) {
        return Stream.of(product.name(), words(product.species()), product.cut(), words(product.form()))
                .filter(part -> !part.isBlank())
                .collect(Collectors.joining(", "));
    }

    /** Thickness, weight, shape, fat and cure, as far as the record says. */
    static String piece(Product product) {
        List<String> parts = new ArrayList<>();
        product.thicknessMillimetres()
                .ifPresent(mm ->
                        parts.add(Figures.trimmed(mm, 1) + " mm (" + Figures.trimmed(mm / 25.4, 2) + " in) thick"));
        product.weightKilograms()
                .ifPresent(kg -> parts.add(
                        Figures.trimmed(kg, 2) + " kg (" + Figures.trimmed(kg * 1000 / GRAMS_PER_POUND, 1) + " lb)"));
        parts.add("shape: " + words(product.shape()));
        product.fatPercent().ifPresent(fat -> parts.add(Figures.trimmed(fat, 1) + " % fat"));
        product.nitritePpm().ifPresent(ppm -> parts.add(Figures.trimmed(ppm, 0) + " ppm nitrite"));
        product.brinePercent().ifPresent(brine -> parts.add(Figures.trimmed(brine, 1) + " % brine"));
        return String.join(", ", parts);
    }

    static String kitchen(Kitchen kitchen) {
        return kitchen.place().isBlank() ? kitchen.name() : kitchen.name() + ", " + kitchen.place();
    }

    static String roles(Roles roles) {
        return roles.operator() + "; " + (roles.reviewer().isBlank() ? "nobody named" : roles.reviewer());
    }

    /** A constant's name in plain words: {@code NON_INTACT} is non-intact. */
    static String words(Enum<?> constant) {
        String words = constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        return words.startsWith("non ") ? words.replaceFirst("non ", "non-") : words;
    }
}
