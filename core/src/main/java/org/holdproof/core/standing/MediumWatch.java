package org.holdproof.core.standing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.standing.StandingQuestion.State;

/**
 * Does the bath or the smoker under way keep its set point? One that fails is named as that, before anybody looks for a
 * probe out of place. The limits are common practice, no source.
 */
final class MediumWatch {
    private static final double BATH_BELOW_CELSIUS = 3;
    private static final double SMOKER_BELOW_CELSIUS = 20;

    /** How long it must have lain that far below. */
    private static final double FAILING_MINUTES = 15;

    /** How long it may take to come to its set point with the food in it. */
    private static final double COMING_MINUTES = 90;

    private final Evidence evidence;
    private final ProbeLog log;
    private final CookSoFar cook;

    MediumWatch(Evidence evidence, ProbeLog log, CookSoFar cook) {
        this.evidence = evidence;
        this.log = log;
        this.cook = cook;
    }

    Optional<StandingQuestion> question() {
        Optional<Stage> stage = cook.underWay()
                .filter(under ->
                        under.kind().isCook() && under.setPointCelsius().isPresent());
        if (stage.isEmpty()) {
            return Optional.empty();
        }
        Span span = evidence.timeline().span(stage.get());
        List<String> columns = stage.get().kind() == Stage.Kind.SMOKE
                ? evidence.batch().columns().air()
                : evidence.batch().columns().bath();
        Optional<Trace> medium = columns.stream()
                .findFirst()
                .flatMap(log::channelNamed)
                .map(channel -> log.trace(channel).between(span.fromMillis(), span.toMillis()))
                .filter(trace -> !trace.isEmpty());
        Optional<String> words = medium.isPresent()
                ? failing(medium.get(), stage.get())
                : stage.get().kind() == Stage.Kind.BATH ? coreFalls(span, stage.get()) : Optional.empty();
        String name = stage.get().kind().title();
        return words.map(said -> new StandingQuestion(
                "medium",
                Character.toUpperCase(name.charAt(0)) + name.substring(1) + " keeps its set point",
                State.NEEDED,
                Optional.empty(),
                said,
                List.of()));
    }

    private static double below(Stage stage) {
        return stage.kind() == Stage.Kind.SMOKE ? SMOKER_BELOW_CELSIUS : BATH_BELOW_CELSIUS;
    }

    private Optional<String> failing(Trace medium, Stage stage) {
        double setPoint = stage.setPointCelsius().orElseThrow();
        double least = setPoint - below(stage);
        OptionalLong since = belowSince(medium, least);
        if (since.isEmpty()) {
            return Optional.empty();
        }
        boolean everThere = since.getAsLong() > medium.firstMillis();
        double minutes = (medium.lastMillis() - since.getAsLong()) / 60_000.0;
        if (minutes < (everThere ? FAILING_MINUTES : COMING_MINUTES)) {
            return Optional.empty();
        }
        double last = medium.celsius(medium.size() - 1);
        return Optional.of("The " + stage.kind().title() + " reads "
                + evidence.wording().temperature(last) + ", "
                + evidence.wording().difference(setPoint - last) + " below its set point, and has been too cold "
                + (everThere ? "since " : "from the start, ")
                + evidence.wording().clock(since.getAsLong()) + ": see to it; the probes are not at fault.");
    }

    /** Since when every reading has lain below a temperature; empty where the last does not. */
    private static OptionalLong belowSince(Trace trace, double celsius) {
        int i = trace.size();
        while (i > 0 && trace.celsius(i - 1) < celsius) {
            i--;
        }
        return i == trace.size() ? OptionalLong.empty() : OptionalLong.of(trace.millis(i));
    }

    /** A bath that was not logged: a core that falls from where it was, below what the bath is set to. */
    private Optional<String> coreFalls(Span span, Stage stage) {
        double setPoint = stage.setPointCelsius().orElseThrow();
        for (Trace core : evidence.within(span)) {
            double peak = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < core.size(); i++) {
                peak = Math.max(peak, core.celsius(i));
            }
            double least = Math.min(peak, setPoint) - BATH_BELOW_CELSIUS - evidence.toleranceCelsius();
            OptionalLong since = core.isEmpty() ? OptionalLong.empty() : belowSince(core, least);
            boolean fell = since.isPresent() && since.getAsLong() > core.firstMillis();
            if (fell && (core.lastMillis() - since.getAsLong()) / 60_000.0 >= FAILING_MINUTES) {
                return Optional.of(core.channel() + " has fallen to "
                        + evidence.wording().temperature(core.celsius(core.size() - 1)) + " though the bath is set to "
                        + evidence.wording().temperature(setPoint) + ": see whether the bath runs.");
            }
        }
        return Optional.empty();
    }
}
