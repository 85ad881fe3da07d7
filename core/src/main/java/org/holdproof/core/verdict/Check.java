package org.holdproof.core.verdict;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.wording.Headline;
import org.holdproof.core.wording.Wording;

/** One question put to the record, and its answer. Made by name: {@link #of(String, String)}. */
public final class Check {
    /** A thermometer's error is a difference of temperatures, though its unit is written like a temperature's. */
    private static final String INSTRUMENT = "instrument";

    /** Figures (minutes, log10) closer than this are equal: far below the millisecond a log's clock can show. */
    public static final double FIGURE_SLACK = 1e-6;

    private final Parts parts;

    private Check(Parts parts) {
        this.parts = parts;
    }

    private record Parts(
            String id,
            String title,
            String rule,
            Optional<Citation> citation,
            Verdict verdict,
            Optional<Bounded> measured,
            OptionalDouble limit,
            Comparison comparison,
            Optional<String> unit,
            String why,
            Optional<String> next,
            Optional<String> channel,
            Optional<Span> window) {}

    /**
     * Begins a check.
     *
     * @param id stable id, such as {@code lethality} or {@code cooling.2}
     * @param title the question in a few words, such as {@code Core pasteurized}
     */
    public static Builder of(String id, String title) {
        return new Builder(id, title);
    }

    /** Stable id, such as {@code lethality} or {@code cooling.2}. */
    public String id() {
        return parts.id;
    }

    /** The question in a few words. */
    public String title() {
        return parts.title;
    }

    /** What was required, in words with figures, in the rule's own unit. */
    public String rule() {
        return parts.rule;
    }

    /** The document and section the rule stands in; empty for a check of the record itself. */
    public Optional<Citation> citation() {
        return parts.citation;
    }

    /** The answer. */
    public Verdict verdict() {
        return parts.verdict;
    }

    /** What the record shows; empty where it shows nothing that can be measured. */
    public Optional<Bounded> measured() {
        return parts.measured;
    }

    /** The limit, in {@link #unit()}. */
    public OptionalDouble limit() {
        return parts.limit;
    }

    /** How the two compare. */
    public Comparison comparison() {
        return parts.comparison;
    }

    /** The unit of the figures and the limit, such as {@code min}; empty with no figures, or where they count days. */
    public Optional<String> unit() {
        return parts.unit;
    }

    /** The verdict's reason in a sentence or two. */
    public String why() {
        return parts.why;
    }

    /** What to do next; empty when met. */
    public Optional<String> next() {
        return parts.next;
    }

    /** The probe that governed; empty where none did. */
    public Optional<String> channel() {
        return parts.channel;
    }

    /** From where this check's own clock started to where it stopped; empty where it has no clock. */
    public Optional<Span> window() {
        return parts.window;
    }

    /**
     * The margin of the worst case, in {@link #unit()}: positive when the limit is kept with room; empty without figures
     * or where the worst case has no bound.
     */
    public OptionalDouble margin() {
        if (measured().isEmpty()
                || limit().isEmpty()
                || Double.isInfinite(measured().get().worst())) {
            return OptionalDouble.empty();
        }
        double beyond = measured().get().worst() - limit().getAsDouble();
        return OptionalDouble.of(comparison().isFloor() ? beyond : -beyond);
    }

    /** The check in one line: its question, what the record shows, and the limit. */
    public String headline(Wording wording) {
        Optional<TemperatureUnit> scale = Arrays.stream(TemperatureUnit.values())
                .filter(one -> unit().filter(one.symbol()::equals).isPresent())
                .findFirst();
        return id().equals(INSTRUMENT) && scale.isPresent()
                ? new Headline(wording).ofDifference(title(), measured(), comparison(), limit(), scale.get())
                : new Headline(wording).of(title(), measured(), comparison(), limit(), unit());
    }

    /** A check with the same parts, to be changed. */
    public Builder toBuilder() {
        Builder builder = new Builder(parts.id, parts.title)
                .required(parts.rule)
                .citation(parts.citation)
                .verdict(parts.verdict)
                .measured(parts.measured)
                .limit(parts.limit)
                .comparison(parts.comparison)
                .why(parts.why);
        builder.unit = parts.unit;
        builder.next = parts.next;
        builder.channel = parts.channel;
        builder.window = parts.window;
        return builder;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Check check && parts.equals(check.parts);
    }

    @Override
    public int hashCode() {
        return parts.hashCode();
    }

    @Override
    public String toString() {
        return parts.toString();
    }

    /** Judges a figure against a limit. */
    public static Verdict judge(Bounded figure, Comparison comparison, double limit) {
        return Verdict.of(figure, comparison, limit, FIGURE_SLACK);
    }

    /** A check in the making. What is not said is absent; the verdict is NOT PROVEN until it is said. */
    public static final class Builder {
        private final String id;
        private final String title;
        private String rule = "";
        private Optional<Citation> citation = Optional.empty();
        private Verdict verdict = Verdict.NOT_PROVEN;
        private Optional<Bounded> measured = Optional.empty();
        private OptionalDouble limit = OptionalDouble.empty();
        private Comparison comparison = Comparison.AT_MOST;
        private Optional<String> unit = Optional.empty();
        private String why = "";
        private Optional<String> next = Optional.empty();
        private Optional<String> channel = Optional.empty();
        private Optional<Span> window = Optional.empty();

        private Builder(String id, String title) {
            this.id = id;
            this.title = title;
        }

        /** What was required, in words with figures, in the rule's own unit. */
        public Builder required(String words) {
            this.rule = words;
            return this;
        }

        /** Where the rule stands. */
        public Builder citation(Citation where) {
            return citation(Optional.of(where));
        }

        /** Where the rule stands, if it stands anywhere. */
        public Builder citation(Optional<Citation> where) {
            this.citation = where;
            return this;
        }

        /** The answer. */
        public Builder verdict(Verdict answer) {
            this.verdict = answer;
            return this;
        }

        /** What the record shows. */
        public Builder measured(Bounded figure) {
            return measured(Optional.of(figure));
        }

        /** What the record shows, if it shows a figure. */
        public Builder measured(Optional<Bounded> figure) {
            this.measured = figure;
            return this;
        }

        /** The limit, in the unit of the figure. */
        public Builder limit(double figure) {
            return limit(OptionalDouble.of(figure));
        }

        /** The limit, if there is one. */
        public Builder limit(OptionalDouble figure) {
            this.limit = figure;
            return this;
        }

        /** How figure and limit compare. */
        public Builder comparison(Comparison how) {
            this.comparison = how;
            return this;
        }

        /** The unit of figure and limit. */
        public Builder unit(String symbol) {
            this.unit = Optional.of(symbol);
            return this;
        }

        /** The verdict's reason in a sentence or two. */
        public Builder why(String words) {
            this.why = words;
            return this;
        }

        /** What to do next; dropped where the check is met. */
        public Builder next(String words) {
            this.next = Optional.of(words);
            return this;
        }

        /** The probe that governed. */
        public Builder channel(String name) {
            this.channel = Optional.of(name);
            return this;
        }

        /** From where this check's own clock started to where it stopped. */
        public Builder window(Span stretch) {
            return window(Optional.of(stretch));
        }

        /** From where this check's own clock started to where it stopped, if it has a clock. */
        public Builder window(Optional<Span> stretch) {
            this.window = stretch;
            return this;
        }

        /** The finished check. */
        public Check build() {
            return new Check(new Parts(
                    id,
                    title,
                    rule,
                    citation,
                    verdict,
                    measured,
                    limit,
                    comparison,
                    unit,
                    why,
                    verdict == Verdict.MET ? Optional.empty() : next,
                    channel,
                    window));
        }
    }
}
