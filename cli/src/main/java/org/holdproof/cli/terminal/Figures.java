package org.holdproof.cli.terminal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.verdict.Check;

/** Figures as a line of the answer shows them: short, but never rounded to the other side of their limit. */
final class Figures {
    private static final int MOST_DECIMALS = 6;

    private Figures() {}

    /** {@code 831…845 min}, or a dash where nothing was measured. */
    static String measured(Check check) {
        if (check.measured().isEmpty()) {
            return "–";
        }
        Bounded figure = check.measured().get();
        String worst = figure(figure.worst(), check);
        String best = figure(figure.best(), check);
        return (worst.equals(best) ? worst : worst + "…" + best) + unit(check);
    }

    /** {@code at least 112 min}, or nothing where there is no limit. */
    static String limit(Check check) {
        return check.limit().isPresent()
                ? check.comparison().words() + " " + shortest(check.limit().getAsDouble(), 3) + unit(check)
                : "";
    }

    private static String unit(Check check) {
        return check.unit().map(unit -> " " + unit).orElse("");
    }

    private static String figure(double value, Check check) {
        if (Double.isInfinite(value)) {
            return value > 0 ? "no end" : "none";
        }
        if (check.limit().isEmpty()) {
            return shortest(value, decimals(value));
        }
        double limit = check.limit().getAsDouble();
        boolean kept = check.comparison().holds(value, limit, Check.FIGURE_SLACK);
        int decimals = decimals(value);
        while (decimals < MOST_DECIMALS
                && check.comparison().holds(rounded(value, decimals).doubleValue(), limit, Check.FIGURE_SLACK)
                        != kept) {
            decimals++;
        }
        return shortest(value, decimals);
    }

    private static int decimals(double value) {
        return Math.abs(value) < 100 ? 1 : 0;
    }

    private static BigDecimal rounded(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    }

    private static String shortest(double value, int decimals) {
        BigDecimal figure = rounded(value, decimals).stripTrailingZeros();
        return figure.scale() < 0 ? figure.setScale(0).toPlainString() : figure.toPlainString();
    }
}
