package org.holdproof.core.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import org.holdproof.core.batch.Stage;
import org.holdproof.core.course.Limits.Meant;
import org.holdproof.core.course.Spell.State;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.LethalityRow;

/**
 * One core probe's account of time: from the first heat to the declared end every minute is heating, lethal or hot, on
 * its way between hot and cold, cold, or unseen. Found from the readings; what a stage is called can excuse a core only
 * where a rule's own text does: cooking.
 */
public final class Account {
    /** Raw food below this does not count as growing, in °C: 50 °F (FSIS Cooking Guideline 2021, page 24). */
    public static final double GROWTH_FLOOR_CELSIUS = 10;

    /** No kitchen warms raw food this far by itself, in °C; a convention of this program. */
    public static final double HEATED_CELSIUS = 35;

    /** A fall of a core by less than this is no interruption of its heating, in °C; a convention of this program. */
    public static final double FALL_CELSIUS = 2;

    /** How far apart readings may hover around a limit and still be one way down, in minutes; a convention. */
    private static final double HOVER_MINUTES = 30;

    private static final double SLACK = TemperatureUnit.SLACK_CELSIUS;

    private final CookTimeline timeline;
    private final Limits limits;
    private final Span span;
    private final CoreBounds bounds;
    private final Meant[] meant;
    private final long recordFrom;
    private final Span cook;
    private final boolean heatedBefore;
    private final boolean interrupted;
    private final OptionalLong lethalMillis;
    private final List<Spell> spells;
    private final Bounded brokenMinutes;

    private Account(Evidence evidence, Trace whole, Limits limits, List<LethalityRow> rows) {
        this.timeline = evidence.timeline();
        this.limits = limits;
        recordFrom = evidence.batch().stages().stream()
                .findFirst()
                .map(stage -> stage.from().toEpochMilli())
                .orElse(timeline.log().fromMillis());
        long ended = timeline.end(evidence.batch(), whole);
        // what was logged after the end says nothing about the batch, not even about its rhythm
        Trace trace = whole.isEmpty() ? whole : whole.between(Math.min(whole.firstMillis(), ended), ended);
        double tolerance = trace.toleranceCelsius() > 0 ? trace.toleranceCelsius() : evidence.toleranceCelsius();
        long raw = lastColdBefore(trace, tolerance);
        span = new Span(Math.min(raw, recordFrom), Math.max(recordFrom, ended));
        heatedBefore = wasHeatedBefore(trace, span.fromMillis());
        bounds = CoreBounds.of(trace, tolerance, span, cuts(), evidence.surroundings());
        meant = new Meant[bounds.size()];
        for (int i = 0; i < meant.length; i++) {
            meant[i] = timeline.meantAt(bounds.fromMillis(i), bounds.toMillis(i));
        }
        long cookEnd = coldAfter(recordFrom);
        OptionalLong lethal = RowTime.firstMet(bounds, rows, new Span(span.fromMillis(), cookEnd));
        boolean again = lethal.isEmpty() && timeline.cooksFrom(cookEnd);
        while (lethal.isEmpty() && timeline.cooksFrom(cookEnd)) {
            cookEnd = coldAfter(cookEnd + 1);
            lethal = RowTime.firstMet(bounds, rows, new Span(span.fromMillis(), cookEnd));
        }
        interrupted = again;
        cook = new Span(recordFrom, cookEnd);
        lethalMillis = lethal;
        long judgedFrom = lethalMillis.orElseGet(this::heatEnd);
        brokenMinutes = broken(judgedFrom);
        spells = spells(judgedFrom, evidence.batch().stages());
    }

    /** The account of one core probe. */
    public static Account of(Evidence evidence, Trace trace, Limits limits, List<LethalityRow> rows) {
        return new Account(evidence, trace, limits, rows);
    }

    private long lastColdBefore(Trace trace, double toleranceCelsius) {
        long raw = Long.MAX_VALUE;
        for (int i = 0; i < trace.size() && trace.millis(i) <= recordFrom; i++) {
            if (raw == Long.MAX_VALUE || trace.celsius(i) + toleranceCelsius <= GROWTH_FLOOR_CELSIUS) {
                raw = trace.millis(i);
            }
        }
        return raw;
    }

    private static boolean wasHeatedBefore(Trace trace, long millis) {
        for (int i = 0; i < trace.size() && trace.millis(i) < millis; i++) {
            if (trace.celsius(i) > HEATED_CELSIUS) {
                return true;
            }
        }
        return false;
    }

    private long[] cuts() {
        TreeSet<Long> cuts = new TreeSet<>();
        cuts.add(recordFrom);
        timeline.stages().forEach(stage -> {
            Span lasts = timeline.span(stage);
            cuts.add(lasts.fromMillis());
            cuts.add(lasts.toMillis());
        });
        return cuts.stream().mapToLong(Long::longValue).toArray();
    }

    /** The first moment after heating at which the core may be below the growth range again, or the end. */
    private long coldAfter(long from) {
        boolean heated = false;
        for (int i = 0; i < bounds.size(); i++) {
            if (bounds.fromMillis(i) < from || !bounds.isRead(i)) {
                continue;
            }
            heated |= bounds.high(i) - bounds.toleranceCelsius() > HEATED_CELSIUS;
            if (heated && bounds.low(i) <= GROWTH_FLOOR_CELSIUS && bounds.lineTo(i) < bounds.lineFrom(i)) {
                return bounds.toMillis(i);
            }
        }
        return span.toMillis();
    }

    /** When the record says the heat ended, for a cook that was never lethal. */
    private long heatEnd() {
        long end = Long.MIN_VALUE;
        for (Stage stage : timeline.stages()) {
            Span lasts = timeline.span(stage);
            if ((stage.kind().isCook() || stage.kind() == Stage.Kind.HOT_HOLD)
                    && lasts.fromMillis() < cook.toMillis()) {
                end = Math.max(end, lasts.toMillis());
            }
        }
        return end == Long.MIN_VALUE ? span.toMillis() : Math.min(end, cook.toMillis());
    }

    /**
     * Time before lethality for which the core had fallen back from where it had been: below the lowest row's temperature
     * and by more than {@value #FALL_CELSIUS} °C. What nobody saw counts at worst.
     */
    private Bounded broken(long until) {
        double highest = Double.NEGATIVE_INFINITY;
        double worst = 0;
        double nominal = 0;
        double tolerance = bounds.toleranceCelsius();
        for (int i = 0; i < bounds.size() && bounds.fromMillis(i) < until; i++) {
            if (!bounds.isRead(i)) {
                worst += highest > HEATED_CELSIUS ? bounds.minutes(i) : 0;
                continue;
            }
            double coldest = bounds.low(i) + tolerance;
            boolean heated = highest > HEATED_CELSIUS && coldest < highest - FALL_CELSIUS - SLACK;
            worst += heated && bounds.low(i) < limits.lowestRowCelsius() - SLACK ? bounds.minutes(i) : 0;
            nominal += heated && coldest < limits.lowestRowCelsius() - SLACK ? bounds.minutes(i) : 0;
            highest = Math.max(highest, bounds.high(i) - tolerance);
        }
        return new Bounded(worst, Math.min(worst, nominal), 0);
    }

    private State state(int i) {
        if (limits.isHot(bounds.low(i), meant[i])) {
            return State.HOT;
        }
        return limits.isCold(bounds.high(i)) ? State.COLD : State.ENDED;
    }

    private List<Spell> spells(long from, List<Stage> stages) {
        List<Spell> found = new ArrayList<>();
        State before = State.HOT;
        int first = -1;
        for (int i = 0; i < bounds.size(); i++) {
            if (bounds.toMillis(i) <= from) {
                continue;
            }
            State now = state(i);
            if (now == State.ENDED) {
                first = first < 0 ? i : first;
            } else {
                if (first >= 0) {
                    add(found, before, now, first, i, from, stages);
                    first = -1;
                }
                before = now;
            }
        }
        if (first >= 0) {
            add(found, before, State.ENDED, first, bounds.size(), from, stages);
        }
        return joined(found);
    }

    /**
     * Readings that hover around a limit on the way down are one way down: a stretch that may have been out, but need not,
     * shortly before the core left hot or shortly after it came to the cold belongs to that.
     */
    private static List<Spell> joined(List<Spell> found) {
        List<Spell> joined = new ArrayList<>();
        for (Spell spell : found) {
            int last = joined.size() - 1;
            if (last >= 0 && isOneWay(joined.get(last), spell)) {
                joined.set(last, joined.get(last).joinedWith(spell));
            } else {
                joined.add(spell);
            }
        }
        return List.copyOf(joined);
    }

    private static boolean isOneWay(Spell earlier, Spell later) {
        double between = (later.span().fromMillis() - earlier.span().toMillis()) / 60_000.0;
        boolean leaving = earlier.goes(State.HOT, State.HOT)
                && later.before() == State.HOT
                && earlier.minutes().best() == 0;
        boolean arriving = earlier.after() == State.COLD
                && later.goes(State.COLD, State.COLD)
                && later.minutes().best() == 0;
        double hovering = leaving ? earlier.minutes().worst() : later.minutes().worst();
        return between <= HOVER_MINUTES && hovering <= HOVER_MINUTES && (leaving || arriving);
    }

    private void add(List<Spell> found, State before, State after, int first, int end, long from, List<Stage> stages) {
        double worst = 0;
        double nominal = 0;
        double best = 0;
        boolean seen = false;
        for (int i = first; i < end; i++) {
            double minutes = (bounds.toMillis(i) - Math.max(from, bounds.fromMillis(i))) / 60_000.0;
            double hot = limits.hotCelsius(meant[i]);
            double cold = limits.coldCelsius();
            worst += minutes;
            seen |= bounds.isBounded(i);
            nominal += minutes
                    * Math.max(0, bounds.shareAtOrAbove(i, cold + SLACK) - bounds.shareAtOrAbove(i, hot - SLACK));
            best += !limits.isHot(bounds.high(i), meant[i]) && !limits.isCold(bounds.low(i)) ? minutes : 0;
        }
        if (!seen && before == after) {
            return;
        }
        Span over = new Span(Math.max(from, bounds.fromMillis(first)), bounds.toMillis(end - 1));
        boolean timeOnly = stages.stream()
                .filter(stage -> stage.kind() == Stage.Kind.TIME_ONLY)
                .map(timeline::span)
                .anyMatch(stage -> stage.fromMillis() < over.toMillis() && stage.toMillis() > over.fromMillis());
        found.add(new Spell(
                before,
                after,
                over,
                new Bounded(worst, Math.min(worst, Math.max(best, nominal)), Math.min(worst, best)),
                timeOnly));
    }

    /** From the first heat, or the record's beginning, to the batch's end. */
    public Span span() {
        return span;
    }

    /** The bounds of the core over the whole account. */
    public CoreBounds bounds() {
        return bounds;
    }

    /** The probe's name. */
    public String channel() {
        return bounds.trace().channel();
    }

    /** From the record's beginning to the first moment after heating at which the core is cold again, or the end. */
    public Span cook() {
        return cook;
    }

    /** Whether the log shows heat before the food's last time in the cold ahead of the record's beginning. */
    public boolean heatedBefore() {
        return heatedBefore;
    }

    /** Whether the food was cold again before it was lethal, and cooked once more. */
    public boolean interrupted() {
        return interrupted;
    }

    /** Whether the core was surely hot in piece {@code i} of its bounds. */
    public boolean isHotAt(int i) {
        return state(i) == State.HOT;
    }

    /** When the first row was surely met, in milliseconds since 1970-01-01T00:00Z; empty where none was. */
    public OptionalLong lethalMillis() {
        return lethalMillis;
    }

    /** How long the heating was interrupted before lethality. */
    public Bounded brokenMinutes() {
        return brokenMinutes;
    }

    /** The stretches after lethality that were neither hot nor cold, in order. */
    public List<Spell> spells() {
        return spells;
    }

    /** The stretches nobody saw, where the record does not keep the food by time alone. */
    public List<Span> unseen() {
        List<Span> found = new ArrayList<>();
        for (int i = 0; i < bounds.size(); i++) {
            int at = i;
            if (bounds.toMillis(i) <= recordFrom
                    || bounds.fromMillis(i) == bounds.toMillis(i)
                    || isProvenUnread(i)
                    || timeline.stages().stream()
                            .filter(stage -> stage.kind() == Stage.Kind.TIME_ONLY)
                            .map(timeline::span)
                            .anyMatch(stage -> stage.fromMillis() <= bounds.fromMillis(at)
                                    && stage.toMillis() >= bounds.toMillis(at))) {
                continue;
            }
            int last = found.size() - 1;
            if (last >= 0 && found.get(last).toMillis() == bounds.fromMillis(i)) {
                found.set(last, new Span(found.get(last).fromMillis(), bounds.toMillis(i)));
            } else {
                found.add(new Span(bounds.fromMillis(i), bounds.toMillis(i)));
            }
        }
        return found;
    }

    /** A piece is accounted for where it was read, or where the medium's log proves it hot or cold. */
    private boolean isProvenUnread(int i) {
        return bounds.isRead(i) || state(i) != State.ENDED;
    }

    /** The longest stretch outside every cooking stage and every chill over which the core may have been hot. */
    public Optional<Span> longestHold() {
        Optional<Span> longest = Optional.empty();
        long from = -1;
        long start = lethalMillis.orElseGet(this::heatEnd);
        for (int i = 0; i < bounds.size(); i++) {
            boolean held = bounds.toMillis(i) > start
                    && meant[i] != Meant.COOKING
                    && !timeline.isIn(Stage.Kind.CHILL, bounds.fromMillis(i), bounds.toMillis(i))
                    && limits.isHot(bounds.high(i), meant[i]);
            from = held ? (from < 0 ? bounds.fromMillis(i) : from) : -1;
            if (held) {
                Span stretch = new Span(Math.max(start, from), bounds.toMillis(i));
                if (longest.isEmpty() || stretch.minutes() > longest.get().minutes()) {
                    longest = Optional.of(stretch);
                }
            }
        }
        return longest;
    }

    /** The first moment from an instant on at which the core was surely cold; empty where it never was. */
    public OptionalLong firstColdFrom(long millis) {
        for (int i = 0; i < bounds.size(); i++) {
            if (bounds.toMillis(i) > millis && state(i) == State.COLD) {
                return OptionalLong.of(bounds.fromMillis(i));
            }
        }
        return OptionalLong.empty();
    }
}
