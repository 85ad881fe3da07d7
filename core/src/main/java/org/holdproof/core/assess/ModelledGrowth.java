package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.holdproof.core.batch.Product;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.kinetics.GrowthChoice;
import org.holdproof.core.kinetics.GrowthRange;
import org.holdproof.core.kinetics.GrowthScreen;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/**
 * What may have grown while the food heated and while it cooled. It has no verdict and overrides none: it is said where
 * a limit on time was missed or could not be proven, with what it cannot claim.
 */
final class ModelledGrowth {
    private static final String SALMONELLA = "Salmonella";

    private final Evidence evidence;
    private final List<GrowthChoice> organisms;

    ModelledGrowth(Evidence evidence, RuleLibrary library) {
        this.evidence = evidence;
        this.organisms = GrowthChoice.forSpecies(library, word(evidence.batch().product()));
    }

    List<Caution> cautions(List<Check> checks) {
        List<Caution> cautions = new ArrayList<>();
        checks.stream()
                .filter(check -> check.id().equals(ComeUpCheck.ID) && check.verdict() != Verdict.MET)
                .findFirst()
                .flatMap(Check::window)
                .flatMap(span -> said("growth.come-up", "while heating", span, false))
                .ifPresent(cautions::add);
        boolean lethal = checks.stream()
                .anyMatch(check -> check.id().equals(LethalityCheck.ID) && check.verdict() == Verdict.MET);
        checks.stream()
                .filter(check -> check.id().startsWith(CoolingChecks.ID) && check.verdict() != Verdict.MET)
                .flatMap(check -> check.window().stream())
                .reduce((one, other) -> new Span(
                        Math.min(one.fromMillis(), other.fromMillis()), Math.max(one.toMillis(), other.toMillis())))
                .flatMap(window -> said("growth.cooling", "while cooling", window, lethal))
                .ifPresent(cautions::add);
        return cautions;
    }

    /** The most that any probe's stretch allows, organism by organism. */
    private Optional<Caution> said(String id, String when, Span span, boolean vegetativeCellsKilled) {
        List<GrowthRange> most = new ArrayList<>();
        for (GrowthChoice organism : organisms) {
            evidence.within(span).stream()
                    .map(trace -> screen(trace, organism, vegetativeCellsKilled))
                    .flatMap(List::stream)
                    .max(Comparator.comparingDouble(GrowthRange::highLog10))
                    .ifPresent(most::add);
        }
        if (most.isEmpty()) {
            return Optional.empty();
        }
        String growth = most.stream().map(GrowthRange::text).collect(Collectors.joining(" "));
        return Optional.of(new Caution(
                id,
                "What may have grown " + when + ", by models. " + growth + " " + GrowthRange.CAUTION + recook(most)));
    }

    /** What a recook would have to reach, where the table says what reduction it stands for. */
    private String recook(List<GrowthRange> most) {
        OptionalDouble target = evidence.authority()
                .lethalityFor(evidence.batch().product())
                .flatMap(choice -> choice.tables().stream().findFirst())
                .filter(table -> table.organism().equals(SALMONELLA))
                .map(LethalityTable::targetLog10)
                .orElse(OptionalDouble.empty());
        Optional<GrowthRange> salmonella = most.stream()
                .filter(range -> range.organism().startsWith(SALMONELLA))
                .findFirst();
        if (target.isEmpty() || salmonella.isEmpty()) {
            return "";
        }
        double halves = Math.ceil(salmonella.get().highLog10() * 2) / 2;
        return String.format(
                Locale.ROOT,
                " A recook would have to reach %.1f log of Salmonella: the %.1f asked and that growth on top (FSIS Cooking Guideline 2021, pages 70 to 72).",
                Recook.neededLog10(target.getAsDouble(), halves),
                target.getAsDouble());
    }

    private List<GrowthRange> screen(Trace trace, GrowthChoice organism, boolean vegetativeCellsKilled) {
        return GrowthScreen.of(
                trace,
                List.of(organism),
                evidence.toleranceCelsius(),
                evidence.gapMinutes(trace),
                vegetativeCellsKilled);
    }

    private static String word(Product product) {
        return product.species().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
