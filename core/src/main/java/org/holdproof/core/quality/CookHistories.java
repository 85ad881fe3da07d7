package org.holdproof.core.quality;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * One cook as it may go: the coldest, the likeliest and the hottest history it is reckoned with.
 *
 * @param cold the least heat
 * @param likely the likeliest
 * @param hot the most heat
 */
public record CookHistories(CookHistory cold, CookHistory likely, CookHistory hot) {
    /** A cook whose history is known: logged, or planned without spread. */
    public static CookHistories known(CookHistory history) {
        return new CookHistories(history, history, history);
    }

    /** All three changed alike. */
    public CookHistories each(UnaryOperator<CookHistory> change) {
        return new CookHistories(change.apply(cold), change.apply(likely), change.apply(hot));
    }

    List<CookHistory> all() {
        return List.of(cold, likely, hot);
    }
}
