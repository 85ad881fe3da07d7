package org.holdproof.report.layout;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.holdproof.core.batch.ColumnRoles;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.CoolingClock;
import org.holdproof.core.quantity.Boundary;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.verdict.Assessment;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Curve;
import org.holdproof.core.verdict.RecordFacts;
import org.holdproof.report.chart.Blank;
import org.holdproof.report.chart.CurveChart;
import org.holdproof.report.chart.Deadline;
import org.holdproof.report.chart.LimitLine;
import org.holdproof.report.chart.StageBand;
import org.holdproof.report.chart.TemperatureChart;
import org.holdproof.report.chart.TemperatureTrace;
import org.holdproof.report.chart.Thinning;
import org.holdproof.report.chart.TimeMark;
import org.holdproof.report.draw.Palette;
import org.holdproof.report.draw.Stroke;

/** Makes a report's charts from its assessment and its log. */
final class CookCharts {
    private static final long MINUTE = 60_000;
    private static final int MOST_OTHER_CORES = 31;
    private static final long EDGE_OF_STORE = 45 * MINUTE;
    private static final long LONG_STORE = 6 * 60 * MINUTE;
    /** A rise that matters for where a probe sat is over by then. */
    private static final long LONGEST_RISE = 4 * 60 * MINUTE;

    private final WordedReport matter;
    private final Assessment assessment;
    private final double width;

    /** @param width of the charts, in points */
    CookCharts(WordedReport matter, double width) {
        this.matter = matter;
        this.assessment = matter.assessment();
        this.width = width;
    }

    /** The whole cook with every stage, the limits over the stages they are for, and the governing probe. */
    TemperatureChart timeline() {
        Span span = wholeCook();
        String governing = governing(RulesApplied.LETHALITY);
        List<TimeMark> marks = matter.rules().lethality().flatMap(Check::window).stream()
                .map(decisive -> new TimeMark(
                        decisive.fromMillis(), decisive.toMillis(), "decides lethality, " + lengthAndTimes(decisive)))
                .toList();
        List<LimitLine> limits = new ArrayList<>();
        cookSpan().ifPresent(cook -> rowLine(cook).ifPresent(limits::add));
        limits.addAll(temperatureLimits());
        assessment.authority().reheat().ifPresent(rule -> rule.target()
                .ifPresent(target -> addLines(
                        limits,
                        Stage.Kind.REHEAT,
                        target,
                        "reheat " + rule.comparison().words())));
        matter.rules().cooling().ifPresent(rule -> {
            for (CoolingRule.Stage stage : rule.stages()) {
                stage.to().ifPresent(to -> addLines(limits, Stage.Kind.CHILL, to, "chill to"));
            }
        });
        return chart(span, longStores(span), governing, limits, List.of(), marks, true);
    }

    /** The cook alone against the published row; empty where no row was applied. */
    Optional<TemperatureChart> cook(Span span) {
        return rowLine(span)
                .map(line -> chart(
                        span,
                        List.of(),
                        governing(RulesApplied.LETHALITY),
                        List.of(line),
                        List.of(),
                        decisive(),
                        false));
    }

    /** A doubted probe's rise against the fastest a core could make; empty where none is doubted. */
    Optional<TemperatureChart> probePlace() {
        Optional<Check> doubted =
                matter.rules().checks(RulesApplied.PROBE_PLACE).stream().findFirst();
        return assessment
                .fastestCore()
                .flatMap(fastest -> doubted.map(check -> {
                    Span heating = check.window().orElseGet(this::wholeCook);
                    Span rise = new Span(
                            heating.fromMillis(), Math.min(heating.toMillis(), heating.fromMillis() + LONGEST_RISE));
                    List<TemperatureTrace> traces = new ArrayList<>(
                            traces(List.of(rise), check.channel().orElse(""), true));
                    traces.add(new TemperatureTrace(
                            "fastest possible core",
                            List.of(Thinning.line(fastest.points())),
                            Stroke.dashed(Palette.LIMIT, 1.4, 4, 2),
                            0));
                    return new TemperatureChart(
                            rise.fromMillis(),
                            rise.toMillis(),
                            List.of(),
                            matter.clock().zone(),
                            matter.degrees().units(),
                            traces,
                            stageBands(),
                            List.of(),
                            List.of(),
                            blanks(rise, check.channel().orElse("")),
                            List.of());
                }));
    }

    /** Cumulative lethality; empty where the assessment has no curve. */
    Optional<CurveChart> lethality(Span span) {
        return assessment.lethality().filter(curve -> !curve.points().isEmpty()).map(curve -> {
            OptionalDouble target = lethalityTarget(curve);
            double top = lethalityTop(curve.points(), target);
            return new CurveChart(
                    span.fromMillis(),
                    span.toMillis(),
                    matter.clock().zone(),
                    curve.points().stream()
                            .filter(point -> Double.isFinite(point.best()))
                            .toList(),
                    curve.unit(),
                    target,
                    target.isPresent()
                            ? Figures.trimmed(target.getAsDouble(), 2) + " " + curve.unit()
                                    + (askedReduction(curve).isPresent() ? " asked" : ", for comparison")
                            : "",
                    top,
                    decisive());
        });
    }

    /** The reduction the curve is held against, in the curve's unit: the rule's own, or the kinetics' as a yardstick. */
    private OptionalDouble lethalityTarget(Curve curve) {
        OptionalDouble asked = askedReduction(curve);
        return asked.isPresent()
                ? asked
                : assessment.integrated().stream()
                        .map(integrated -> integrated.kinetics().targetLog10())
                        .filter(OptionalDouble::isPresent)
                        .findFirst()
                        .orElse(OptionalDouble.empty());
    }

    private OptionalDouble askedReduction(Curve curve) {
        return matter.rules().checks(RulesApplied.LETHALITY).stream()
                .filter(check -> check.unit().filter(curve.unit()::equals).isPresent()
                        && check.limit().isPresent())
                .mapToDouble(check -> check.limit().getAsDouble())
                .findFirst();
    }

    /**
     * The part of the record in which lethality builds up: until it leaves the chart even at worst, or builds up no
     * more. The time the row asks for is always inside.
     */
    Span lethalitySpan() {
        List<Curve.Point> points = assessment.lethality().map(Curve::points).orElse(List.of());
        long from = Long.MAX_VALUE;
        long to = Long.MIN_VALUE;
        if (!points.isEmpty() && points.get(points.size() - 1).best() > 0) {
            Curve.Point last = points.get(points.size() - 1);
            double top =
                    lethalityTop(points, lethalityTarget(assessment.lethality().orElseThrow()));
            double nothing = 0.002 * Math.min(last.best(), top);
            for (Curve.Point point : points) {
                if (point.best() <= nothing) {
                    from = point.epochMillis();
                }
                boolean buildsUp = point.best() < 0.999 * last.best() || point.worst() < 0.999 * last.worst();
                if (buildsUp && point.worst() <= top) {
                    to = point.epochMillis();
                }
            }
            from = Math.min(from, to);
        }
        Span cook = cookSpan().orElseGet(this::wholeCook);
        Optional<Check> check = matter.rules().lethality();
        Optional<Span> decisive = check.flatMap(Check::window);
        if (from > to && decisive.isEmpty()) {
            return cook;
        }
        if (decisive.isPresent()) {
            double asked = check.get().unit().filter("min"::equals).isPresent()
                    ? check.get().limit().orElse(0)
                    : 0;
            from = Math.min(from, decisive.get().fromMillis());
            to = Math.max(to, decisive.get().fromMillis() + Math.round(asked * MINUTE));
        }
        return widened(from, to, wholeCook());
    }

    private static double lethalityTop(List<Curve.Point> points, OptionalDouble target) {
        double highest = points.stream()
                .mapToDouble(Curve.Point::best)
                .filter(Double::isFinite)
                .max()
                .orElse(1);
        return target.isPresent()
                ? Math.min(Math.max(highest, target.getAsDouble() * 1.25), target.getAsDouble() * 2.5)
                : Math.max(highest, 1);
    }

    /** Cooling against its deadlines; empty where nothing was judged on a cooling schedule. */
    Optional<TemperatureChart> cooling() {
        List<Check> checks = matter.rules().checks(RulesApplied.COOLING);
        List<Span> spans =
                checks.stream().flatMap(check -> check.window().stream()).toList();
        Stream<Span> chills = assessment.batch().stages().stream()
                .filter(stage -> stage.kind() == Stage.Kind.CHILL)
                .map(stage -> new Span(stage.from().toEpochMilli(), end(stage)));
        List<Span> shown = Stream.concat(spans.stream(), checks.isEmpty() ? Stream.empty() : chills)
                .toList();
        if (shown.isEmpty()) {
            return Optional.empty();
        }
        List<Deadline> deadlines = deadlines(checks);
        long from = shown.stream().mapToLong(Span::fromMillis).min().orElseThrow();
        long to = Math.max(
                shown.stream().mapToLong(Span::toMillis).max().orElseThrow(),
                deadlines.stream().mapToLong(Deadline::dueMillis).max().orElse(Long.MIN_VALUE));
        Span whole = wholeCook();
        Span span = widened(from, to, new Span(whole.fromMillis(), Math.max(whole.toMillis(), to)));
        return Optional.of(chart(
                span,
                longStores(span),
                governing(RulesApplied.COOLING),
                boundariesWithoutDeadline(span, deadlines),
                deadlines,
                List.of(),
                true));
    }

    private List<LimitLine> boundariesWithoutDeadline(Span span, List<Deadline> deadlines) {
        List<LimitLine> lines = new ArrayList<>();
        matter.rules().cooling().ifPresent(rule -> {
            for (CoolingRule.Stage stage : rule.stages()) {
                Stream.of(stage.from(), stage.to()).flatMap(Optional::stream).forEach(boundary -> {
                    boolean drawn = deadlines.stream().anyMatch(deadline -> deadline.celsius() == boundary.celsius())
                            || lines.stream().anyMatch(line -> line.celsius() == boundary.celsius());
                    if (!drawn) {
                        lines.add(
                                new LimitLine(boundary.celsius(), span.fromMillis(), span.toMillis(), boundary.text()));
                    }
                });
            }
        });
        return lines;
    }

    /** The corners of the schedule on the clock the checks were judged by, straight lines between readings. */
    private List<Deadline> deadlines(List<Check> checks) {
        Optional<CoolingRule> rule = matter.rules().cooling();
        Optional<Span> window =
                checks.stream().flatMap(check -> check.window().stream()).findFirst();
        Optional<Stage> chill = assessment.batch().first(Stage.Kind.CHILL);
        Optional<Integer> column = matter.content().log().channelNamed(governing(RulesApplied.COOLING));
        if (rule.isEmpty() || window.isEmpty() || column.isEmpty()) {
            return List.of();
        }
        Trace trace = matter.content()
                .log()
                .trace(column.get())
                .between(window.get().fromMillis(), window.get().toMillis())
                .corrected(assessment.record().offsetCelsius());
        if (trace.isEmpty()) {
            return List.of();
        }
        CoolingClock.Events events = new CoolingClock.Events(
                OptionalLong.of(window.get().fromMillis()),
                chill.map(stage -> OptionalLong.of(stage.from().toEpochMilli())).orElse(OptionalLong.empty()));
        List<Deadline> deadlines = new ArrayList<>();
        for (CoolingClock.StageTime time :
                CoolingClock.straight(trace, Double.POSITIVE_INFINITY, events).time(rule.get())) {
            Optional<Boundary> to = time.stage().to();
            if (to.isPresent() && time.limitMillis().isPresent()) {
                long due = time.limitMillis().getAsLong();
                deadlines.add(new Deadline(
                        to.get().celsius(),
                        time.startMillis(),
                        due,
                        to.get().text() + " by " + matter.clock().time(due)));
            }
        }
        return deadlines;
    }

    /** The middles of stores so long that the rest would be drawn too narrow to be read. */
    private List<Span> longStores(Span span) {
        List<Span> stores = new ArrayList<>();
        for (Stage stage : assessment.batch().stages()) {
            boolean keeps = stage.kind() == Stage.Kind.STORE || stage.kind() == Stage.Kind.FREEZE;
            long from = Math.max(span.fromMillis(), stage.from().toEpochMilli()) + EDGE_OF_STORE;
            long to = Math.min(span.toMillis(), end(stage)) - EDGE_OF_STORE;
            boolean apart = stores.isEmpty() || stores.get(stores.size() - 1).toMillis() < from;
            if (keeps && apart && to - from > LONG_STORE && to - from > (span.toMillis() - span.fromMillis()) / 4) {
                stores.add(new Span(from, to));
            }
        }
        return stores;
    }

    private TemperatureChart chart(
            Span span,
            List<Span> leftOut,
            String governing,
            List<LimitLine> limits,
            List<Deadline> deadlines,
            List<TimeMark> marks,
            boolean withSurroundings) {
        return new TemperatureChart(
                span.fromMillis(),
                span.toMillis(),
                leftOut,
                matter.clock().zone(),
                matter.degrees().units(),
                traces(drawn(span, leftOut), governing, withSurroundings),
                stageBands(),
                limits,
                deadlines,
                blanks(span, governing),
                marks);
    }

    private List<TimeMark> decisive() {
        return matter.rules().lethality().flatMap(Check::window).stream()
                .map(span -> new TimeMark(span.fromMillis(), span.toMillis(), lengthAndTimes(span)))
                .toList();
    }

    private String lengthAndTimes(Span span) {
        return KitchenClock.length(span.minutes()) + " (" + matter.clock().time(span.fromMillis()) + " to "
                + matter.clock().time(span.toMillis()) + ")";
    }

    private Optional<LimitLine> rowLine(Span span) {
        return matter.rules()
                .row()
                .map((LethalityRow row) -> new LimitLine(
                        row.at().celsius(),
                        span.fromMillis(),
                        span.toMillis(),
                        row.seconds() > 0
                                ? row.at().text() + " for " + row.printedTime()
                                : row.at().text()));
    }

    /** The limits that checks hold a temperature itself to, over the part they judged: hot hold, cold store. */
    private List<LimitLine> temperatureLimits() {
        List<LimitLine> limits = new ArrayList<>();
        for (Check check : assessment.checks()) {
            Optional<TemperatureUnit> scale = Figures.scale(check.unit().orElse(""));
            boolean judgesTemperature = scale.isPresent() && !Figures.isDifference(check);
            boolean lasts = check.window().map(span -> span.minutes() > 0).orElse(false);
            if (judgesTemperature && lasts && check.limit().isPresent()) {
                Boundary limit = new Boundary(check.limit().getAsDouble(), scale.get());
                limits.add(new LimitLine(
                        limit.celsius(),
                        check.window().get().fromMillis(),
                        check.window().get().toMillis(),
                        check.comparison().words() + " " + limit.text()));
            }
        }
        return limits;
    }

    private void addLines(List<LimitLine> limits, Stage.Kind kind, Boundary boundary, String words) {
        for (Stage stage : assessment.batch().stages()) {
            if (stage.kind() == kind) {
                limits.add(new LimitLine(
                        boundary.celsius(), stage.from().toEpochMilli(), end(stage), words + " " + boundary.text()));
            }
        }
    }

    private List<StageBand> stageBands() {
        return assessment.batch().stages().stream()
                .map(stage -> new StageBand(
                        stage.kind().title(), stage.from().toEpochMilli(), end(stage), tint(stage.kind())))
                .toList();
    }

    private static Color tint(Stage.Kind kind) {
        return switch (kind) {
            case SMOKE, BATH -> Palette.COOKING;
            case HOT_HOLD, REHEAT -> Palette.KEEPING_HOT;
            case CHILL, STORE, FREEZE -> Palette.COOLING;
            case BAG, SERVE, TIME_ONLY -> Palette.BETWEEN;
        };
    }

    /** A stage's end; an open one lasts to the next stage or the end of the record, a moment ends as it begins. */
    private long end(Stage stage) {
        long from = stage.from().toEpochMilli();
        if (stage.to().isPresent()) {
            return stage.to().get().toEpochMilli();
        }
        if (stage.kind() == Stage.Kind.BAG || stage.kind() == Stage.Kind.SERVE) {
            return from;
        }
        return assessment.batch().stages().stream()
                .mapToLong(other -> other.from().toEpochMilli())
                .filter(start -> start > from)
                .min()
                .orElse(Math.max(from, assessment.span().toMillis()));
    }

    private Span wholeCook() {
        long from = assessment.span().fromMillis();
        long to = assessment.span().toMillis();
        for (Stage stage : assessment.batch().stages()) {
            from = Math.min(from, stage.from().toEpochMilli());
            to = Math.max(to, end(stage));
        }
        return to - from >= MINUTE ? new Span(from, to) : new Span(from - 5 * MINUTE, to + 5 * MINUTE);
    }

    private Optional<Span> cookSpan() {
        List<Stage> cooks = assessment.batch().stages().stream()
                .filter(stage -> stage.kind().isCook())
                .toList();
        return cooks.isEmpty()
                ? Optional.empty()
                : Optional.of(new Span(
                        cooks.get(0).from().toEpochMilli(),
                        cooks.stream().mapToLong(this::end).max().orElseThrow()));
    }

    private static Span widened(long from, long to, Span within) {
        long room = Math.max(5 * MINUTE, (to - from) / 20);
        long start = Math.max(within.fromMillis(), from - room);
        long end = Math.min(within.toMillis(), to + room);
        return end > start ? new Span(start, end) : new Span(start, start + MINUTE);
    }

    /** The core probe that governed a question, or the first core probe. */
    private String governing(String question) {
        List<String> cores = assessment.batch().columns().core();
        return matter.rules().checks(question).stream()
                .flatMap(check -> check.channel().stream())
                .filter(channel -> cores.stream().anyMatch(core -> same(core, channel)))
                .findFirst()
                .orElse(cores.isEmpty() ? "" : cores.get(0));
    }

    private static boolean same(String one, String other) {
        return one.strip().equalsIgnoreCase(other.strip());
    }

    private List<TemperatureTrace> traces(List<Span> drawn, String governing, boolean withSurroundings) {
        ColumnRoles roles = assessment.batch().columns();
        ProbeRoles names = new ProbeRoles(roles);
        RecordFacts record = assessment.record();
        List<TemperatureTrace> traces = new ArrayList<>();
        List<String> others = roles.core().stream()
                .filter(core -> !same(core, governing))
                .limit(MOST_OTHER_CORES)
                .toList();
        trace(drawn, governing, record.gapLimitMinutes())
                .ifPresent(runs -> traces.add(new TemperatureTrace(
                        others.isEmpty() ? names.title(governing) : names.title(governing) + " (governs)",
                        runs,
                        Stroke.solid(Palette.CORE, 1.5),
                        record.toleranceCelsius())));
        for (int i = 0; i < others.size(); i++) {
            String legend = i > 0
                    ? ""
                    : others.size() == 1 ? names.title(others.get(0)) : "other core probes (" + others.size() + ")";
            trace(drawn, others.get(i), record.gapLimitMinutes())
                    .ifPresent(runs ->
                            traces.add(new TemperatureTrace(legend, runs, Stroke.solid(Palette.OTHER_CORE, 0.8), 0)));
        }
        if (withSurroundings) {
            for (String bath : roles.bath()) {
                trace(drawn, bath, GapLimit.CEILING_MINUTES)
                        .ifPresent(runs -> traces.add(new TemperatureTrace(
                                names.title(bath), runs, Stroke.dashed(Palette.BATH, 1, 5, 1.5), 0)));
            }
            for (String air : roles.air()) {
                trace(drawn, air, GapLimit.CEILING_MINUTES)
                        .ifPresent(runs -> traces.add(new TemperatureTrace(
                                names.title(air), runs, Stroke.dashed(Palette.AIR, 0.9, 1.2, 1.2), 0)));
            }
        }
        return traces;
    }

    /** What is left of a span when some of it is left out. */
    private static List<Span> drawn(Span span, List<Span> leftOut) {
        List<Span> drawn = new ArrayList<>();
        long from = span.fromMillis();
        for (Span gone : leftOut) {
            drawn.add(new Span(from, gone.fromMillis()));
            from = gone.toMillis();
        }
        drawn.add(new Span(from, span.toMillis()));
        return drawn;
    }

    private Optional<List<Thinning.Run>> trace(List<Span> drawn, String channel, double gapMinutes) {
        return matter.content().log().channelNamed(channel).map(column -> drawn.stream()
                .flatMap(span -> Thinning.of(
                        matter.content().log(),
                        column,
                        span.fromMillis(),
                        span.toMillis(),
                        TemperatureChart.columns(width),
                        assessment.record().offsetCelsius(),
                        gapMinutes)
                        .stream())
                .toList());
    }

    private List<Blank> blanks(Span shown, String governing) {
        List<Blank> blanks = new ArrayList<>();
        for (RecordFacts.Gap gap : assessment.record().gaps()) {
            if (gap.channel()
                    .toLowerCase(Locale.ROOT)
                    .strip()
                    .equals(governing.toLowerCase(Locale.ROOT).strip())) {
                blanks.add(new Blank(
                        Math.max(gap.span().fromMillis(), assessment.span().fromMillis()),
                        Math.min(gap.span().toMillis(), assessment.span().toMillis())));
            }
        }
        double gapMillis = assessment.record().gapLimitMinutes() * MINUTE;
        if (assessment.span().fromMillis() - shown.fromMillis() > gapMillis) {
            blanks.add(new Blank(shown.fromMillis(), assessment.span().fromMillis()));
        }
        if (shown.toMillis() - assessment.span().toMillis() > gapMillis) {
            blanks.add(new Blank(assessment.span().toMillis(), shown.toMillis()));
        }
        return blanks;
    }
}
