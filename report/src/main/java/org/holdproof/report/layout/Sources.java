package org.holdproof.report.layout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;
import org.holdproof.core.verdict.Check;
import org.holdproof.report.draw.Lettering;

/** The documents the rules stand in, with their editions and how their figures were obtained. */
final class Sources {
    private static final Lettering TEXT = PageLettering.CELL;

    private Sources() {}

    static void lay(WordedReport matter, Flow flow) {
        flow.section("Sources", 60);
        Map<Citation, Set<String>> uses = new LinkedHashMap<>();
        for (Check check : matter.assessment().checks()) {
            Optional<Citation> own = matter.content()
                            .siteLimits()
                            .filter(site -> site.publishedRules().containsKey(check.id()))
                            .isPresent()
                    ? Optional.empty()
                    : check.citation();
            own.ifPresent(citation ->
                    uses.computeIfAbsent(citation, any -> new LinkedHashSet<>()).add(check.title()));
        }
        matter.rules().row().ifPresent(row -> uses.computeIfAbsent(row.citation(), any -> new LinkedHashSet<>())
                .add("lethality row"));
        matter.assessment().integrated().forEach(integrated -> uses.computeIfAbsent(
                        integrated.kinetics().citation(), any -> new LinkedHashSet<>())
                .add("lethality curve"));
        Lettering text = PageLettering.TEXT;
        if (uses.isEmpty()) {
            flow.paragraph(text, "No check rests on a document.");
            return;
        }
        double rest = flow.width() - 3 * Table.GUTTER;
        Table table = new Table(List.of(
                Table.Column.of("Document and edition", rest * 0.30),
                Table.Column.of("Section", rest * 0.17),
                Table.Column.of("Used for", rest * 0.17),
                Table.Column.of("How its figures were obtained", rest * 0.36)));
        uses.forEach((citation, titles) -> table.textRow(
                flow,
                TEXT,
                List.of(
                        document(citation),
                        citation.section().isEmpty() ? "—" : citation.section(),
                        String.join("; ", titles),
                        how(citation))));
        table.lay(flow);
        flow.paragraph(
                PageLettering.NOTE,
                "Reference tables, edition " + matter.assessment().tablesEdition()
                        + ". A figure from memory is not law before someone has opened the document.");
    }

    private static String document(Citation citation) {
        Source source = citation.source();
        List<String> parts = new ArrayList<>(List.of(citation.document()));
        Stream.of(source.title(), source.issuer(), source.edition(), source.year(), source.url())
                .filter(part -> !part.isBlank())
                .filter(part -> parts.stream().noneMatch(said -> said.contains(part)))
                .forEach(parts::add);
        return String.join(", ", parts);
    }

    private static String how(Citation citation) {
        String words = wording(citation.how());
        String document = citation.source().how() == citation.how()
                ? ""
                : "document: " + wording(citation.source().how());
        return Stream.of(words, document, citation.note())
                .filter(Objects::nonNull)
                .filter(part -> !part.isBlank())
                .collect(Collectors.joining("; "));
    }

    private static String wording(How how) {
        return switch (how) {
            case READ -> "read in the document";
            case DERIVED -> "worked out from figures that were read";
            case QUOTED, MEMORY, CONVENTION, COMMON_PRACTICE -> how.caveat();
        };
    }
}
