package org.holdproof.core.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.holdproof.core.batch.Ending;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Account;
import org.holdproof.core.course.Accounts;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.Spell;
import org.holdproof.core.course.Spell.State;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.measure.CoolingClock.Events;
import org.holdproof.core.measure.CoolingClock.StageTime;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;
import org.holdproof.core.wording.Wording;

/**
 * Was the food cooled in time, stage by stage, on the rule's own clock? The warmest probe answers. Where the authority
 * accepts several schedules, one kept whole is enough.
 */
public final class CoolingChecks {
    public static final String ID = "cooling";

    /** How long food on its way to the bin may lie; this program's convention. */
    private static final double HANDLING_MINUTES = 30;

    private final Evidence evidence;
    private final List<Account> accounts;

    /** Cooling of food under way, whose stages alone are known. */
    public CoolingChecks(Evidence evidence) {
        this.evidence = evidence;
        this.accounts = List.of();
    }

    CoolingChecks(Evidence evidence, Accounts accounts) {
        this.evidence = evidence;
        this.accounts = accounts.probes();
    }

    /** One probe's way down: from leaving hot to the cold, or as far as it went. */
    private record Run(Account account, Spell spell, Trace trace, Events events) {}

    List<Check> checks() {
        List<List<Run>> byProbe = new ArrayList<>();
        for (Account account : accounts) {
            List<Run> runs = new ArrayList<>();
            for (Spell spell : account.spells()) {
                if (isCooling(spell) && !account.bounds().trace().isEmpty() && !isDiscardedInTime(account, spell)) {
                    runs.add(run(account, spell));
                }
            }
            byProbe.add(runs);
        }
        int most = byProbe.stream().mapToInt(List::size).max().orElse(0);
        List<Check> checks = new ArrayList<>();
        for (int number = 0; number < most; number++) {
            int at = number;
            checks.addAll(together(byProbe.stream()
                    .filter(runs -> runs.size() > at)
                    .map(runs -> runs.get(at))
                    .toList()));
        }
        return checks;
    }

    /**
     * Food that left hot and came to the cold, or never came back. What returned to hot, or was served, is judged by what
     * the authority allows under hot; beyond that its clock runs as a cooling's.
     */
    private boolean isCooling(Spell spell) {
        return spell.before() == State.HOT
                && !spell.timeOnly()
                && (spell.after() == State.COLD
                        || (spell.after() == State.ENDED
                                && evidence.batch()
                                        .ending()
                                        .filter(ending -> ending.how() == Ending.How.SERVED)
                                        .isEmpty()));
    }

    /** Food thrown away before it was cold is judged as far as its clock ran. */
    private boolean isDiscardedInTime(Account account, Spell spell) {
        return spell.after() == State.ENDED
                && spell.minutes().worst() <= HANDLING_MINUTES
                && evidence.batch()
                        .ending()
                        .filter(ending -> ending.how() == Ending.How.DISCARDED)
                        .isPresent()
                && asFarAsItRan(account, spell) != Verdict.NOT_MET;
    }

    private List<Check> together(List<Run> runs) {
        List<CoolingRule> open = evidence.authority().cooling().stream()
                .filter(rule -> rule.isOpenTo(evidence.batch().product()))
                .toList();
        if (open.isEmpty()) {
            return List.of(
                    unanswered(
                            "a cooling schedule",
                            evidence.authority().title()
                                    + " as held here names no schedule for this product. Ask the authority which one governs."));
        }
        return open.stream()
                .map(rule -> under(rule, runs))
                .min(Comparator.comparing(CoolingChecks::verdict))
                .orElseThrow();
    }

    private Run run(Account account, Spell spell) {
        Trace whole = account.bounds().trace();
        double lowest = evidence.authority().cooling().stream()
                .filter(rule -> rule.isOpenTo(evidence.batch().product()))
                .flatMap(rule -> rule.stages().stream())
                .flatMap(stage -> stage.to().stream())
                .mapToDouble(Boundary::celsius)
                .min()
                .orElse(Double.NEGATIVE_INFINITY);
        long left = spell.span().fromMillis();
        int first = lastAtOrBefore(whole, left);
        int last = first;
        long hotAgain = hotAgain(account, spell);
        while (last + 1 < whole.size() && whole.millis(last + 1) <= hotAgain) {
            last++;
            if (whole.millis(last) > left
                    && whole.millis(last) >= spell.span().toMillis()
                    && whole.celsius(last) + evidence.toleranceCelsius() <= lowest + TemperatureUnit.SLACK_CELSIUS) {
                break;
            }
        }
        Trace trace = whole.between(whole.millis(first), whole.millis(last));
        OptionalLong heatEnd = evidence.timeline().lastHeatBefore(left).stream()
                .mapToLong(
                        stage -> Math.min(left, evidence.timeline().span(stage).toMillis()))
                .findFirst();
        OptionalLong chill = evidence.timeline().all(Stage.Kind.CHILL).stream()
                .mapToLong(stage -> stage.from().toEpochMilli())
                .filter(from ->
                        from >= heatEnd.orElse(left) && from < spell.span().toMillis())
                .findFirst();
        return new Run(
                account, spell, trace, new Events(OptionalLong.of(heatEnd.orElse(left)), OptionalLong.of(left), chill));
    }

    /** When the core next was hot, or the batch ended. */
    private static long hotAgain(Account account, Spell spell) {
        boolean past = false;
        for (Spell other : account.spells()) {
            if (past && (other.after() == State.HOT || other.before() == State.HOT)) {
                return other.before() == State.HOT
                        ? other.span().fromMillis()
                        : other.span().toMillis();
            }
            past |= other.equals(spell);
        }
        return account.span().toMillis();
    }

    private static int lastAtOrBefore(Trace trace, long millis) {
        int found = 0;
        int end = trace.size() - 1;
        while (found < end) {
            int middle = (found + end + 1) >>> 1;
            if (trace.millis(middle) <= millis) {
                found = middle;
            } else {
                end = middle - 1;
            }
        }
        return found;
    }

    /** How a cooling that only began stands: what its rule's clocks say as far as they ran. */
    Verdict asFarAsItRan(Account account, Spell spell) {
        if (account.bounds().trace().isEmpty()) {
            return Verdict.NOT_PROVEN;
        }
        Run run = run(account, spell);
        Trace part = run.trace().between(run.trace().firstMillis(), spell.span().toMillis());
        if (part.isEmpty()) {
            return Verdict.NOT_PROVEN;
        }
        return evidence.authority().cooling().stream()
                .filter(rule -> rule.isOpenTo(evidence.batch().product()))
                .map(rule -> CoolingClock.bounding(part, evidence.toleranceCelsius(), run.events()).time(rule).stream()
                        .map(CoolingClock::judge)
                        .reduce(Verdict.MET, Verdict::and))
                .min(Comparator.naturalOrder())
                .orElse(Verdict.NOT_PROVEN);
    }

    private static Verdict verdict(List<Check> checks) {
        return checks.stream().map(Check::verdict).reduce(Verdict.MET, Verdict::and);
    }

    private List<Check> under(CoolingRule rule, List<Run> runs) {
        if (rule.stages().stream().allMatch(stage -> stage.maxMinutes().isEmpty())) {
            return List.of(unanswered(
                    rule.title(), "The rule gives no figure: the kitchen's own HACCP plan sets the schedule."));
        }
        List<Check> checks = new ArrayList<>();
        for (int number = 0; number < rule.stages().size(); number++) {
            int stage = number;
            checks.add(runs.stream()
                    .map(run -> judge(rule, stage, run))
                    .max(Governing.ORDER)
                    .orElseThrow());
        }
        return checks;
    }

    /**
     * From where the clock can have started to the end of the chill. It can have started when the food left the heat,
     * or before, if it fell through the upper temperature while the stage still ran and did not recover.
     */
    public Span window(CoolingRule rule, Stage chill) {
        long chillFrom = chill.from().toEpochMilli();
        long to = Math.max(chillFrom, evidence.timeline().span(chill).toMillis());
        Optional<Stage> heat = evidence.timeline().lastHeatBefore(chillFrom);
        if (heat.isEmpty()) {
            return new Span(chillFrom, to);
        }
        long left = Math.min(chillFrom, evidence.timeline().span(heat.get()).toMillis());
        long from = left;
        Optional<Boundary> upper = rule.stages().stream()
                .map(CoolingRule.Stage::from)
                .flatMap(Optional::stream)
                .findFirst();
        if (upper.isPresent()) {
            long heatFrom = heat.get().from().toEpochMilli();
            for (Trace trace : evidence.within(new Span(heatFrom, left))) {
                from = Math.min(from, lastAtOrAbove(trace, upper.get().celsius(), left));
            }
        }
        return new Span(from, to);
    }

    /** The last reading at or above a temperature, if the food had been there and was below it at the end. */
    private static long lastAtOrAbove(Trace trace, double celsius, long otherwise) {
        for (int i = trace.size() - 1; i >= 0; i--) {
            if (trace.celsius(i) >= celsius - TemperatureUnit.SLACK_CELSIUS) {
                return i == trace.size() - 1 ? otherwise : trace.millis(i);
            }
        }
        return otherwise;
    }

    private Check judge(CoolingRule rule, int number, Run run) {
        Trace trace = run.trace();
        Events events = run.events();
        StageTime bounds = CoolingClock.bounding(trace, evidence.toleranceCelsius(), events)
                .time(rule)
                .get(number);
        StageTime straight = CoolingClock.straight(trace, Double.POSITIVE_INFINITY, events)
                .time(rule)
                .get(number);
        Bounded minutes = new Bounded(
                bounds.longestMinutes(),
                Math.min(bounds.longestMinutes(), Math.max(bounds.shortestMinutes(), straight.shortestMinutes())),
                bounds.shortestMinutes());
        CoolingRule.Stage stage = bounds.stage();
        Verdict verdict = CoolingClock.judge(bounds);
        return Check.of(ID + "." + stage.number(), "Cooled in time, stage " + stage.number())
                .required(required(stage))
                .citation(rule.citation())
                .verdict(verdict)
                .measured(minutes)
                .limit(stage.maxMinutes())
                .comparison(stage.comparison())
                .unit("min")
                .why(why(trace, bounds, straight, verdict))
                .next(next(rule))
                .channel(trace.channel())
                .window(window(bounds, trace))
                .build();
    }

    /** The stage's own clock: from the earliest it can have started to the latest it can have stopped. */
    private static Span window(StageTime time, Trace trace) {
        long from = time.earliestStartMillis().orElse(time.startMillis());
        long to = Double.isFinite(time.longestMinutes()) && time.stage().clock() == CoolingRule.Clock.ELAPSED
                ? from + Math.round(time.longestMinutes() * 60_000)
                : trace.lastMillis();
        return new Span(from, Math.max(from, to));
    }

    private String required(CoolingRule.Stage stage) {
        String from =
                switch (stage.start()) {
                    case END_OF_COOKING -> "from the end of cooking";
                    case START_OF_CHILLING -> "from the start of chilling";
                    case START_OF_HEATING -> "from the start of heating";
                    case END_OF_PREPARATION -> "from the end of preparation";
                    case FALLS_THROUGH, SAME_AS_FIRST, AFTER_PREVIOUS ->
                        stage.from()
                                .map(boundary -> "from " + evidence.wording().boundary(boundary))
                                .orElse("");
                };
        String to = stage.to()
                .map(boundary -> " to " + evidence.wording().boundary(boundary))
                .orElse(" until chilling starts");
        String limit = stage.maxMinutes().isPresent()
                ? " in " + stage.comparison().words() + " "
                        + Wording.minutes(stage.maxMinutes().getAsDouble())
                : "";
        return "core " + from + to + limit
                + switch (stage.clock()) {
                    case ELAPSED -> "";
                    case DWELL -> ", all time in between added up";
                    case GROWTH, NONE -> ", no figure in the document";
                };
    }

    private String why(Trace trace, StageTime bounds, StageTime straight, Verdict verdict) {
        String warmest = "The warmest probe (" + trace.channel() + ") ";
        String end = bounds.stage()
                .to()
                .map(boundary -> evidence.wording().boundary(boundary))
                .orElse("the chill");
        if (!straight.ended()) {
            return warmest + "is not at " + end + " when its readings end, at "
                    + evidence.wording().temperature(trace.celsius(trace.size() - 1)) + " after "
                    + Wording.minutes(bounds.shortestMinutes()) + ".";
        }
        if (!bounds.startLogged()) {
            return warmest + "begins below the stage's upper temperature: when the clock started is not logged.";
        }
        if (!bounds.ended()) {
            return warmest + "ends at " + evidence.wording().temperature(trace.celsius(trace.size() - 1))
                    + ", too close to " + end + " to be sure of with a tolerance of "
                    + evidence.wording().difference(evidence.toleranceCelsius()) + ".";
        }
        String took = warmest + "took " + Wording.minutes(straight.shortestMinutes()) + " ("
                + Wording.between(bounds.shortestMinutes(), bounds.longestMinutes()) + ")";
        String ranOut = verdict == Verdict.NOT_MET && bounds.limitMillis().isPresent()
                ? "; the limit ran out at "
                        + evidence.wording().clock(bounds.limitMillis().getAsLong())
                : "";
        return took + ranOut + ".";
    }

    private static String next(CoolingRule rule) {
        return "Do not serve on this record. "
                + (rule.correctiveAction().isEmpty()
                        ? "Hold the food apart and follow the HACCP plan."
                        : rule.correctiveAction().strip().replaceAll("[.;]*$", "") + ".");
    }

    private static Check unanswered(String rule, String why) {
        return Check.of(ID, "Cooled in time")
                .required(rule)
                .verdict(Verdict.NOT_PROVEN)
                .comparison(Comparison.AT_MOST)
                .why(why)
                .next("Do not serve on this record. Hold the food apart and follow the HACCP plan.")
                .build();
    }
}
