package org.holdproof.core.course;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.holdproof.core.batch.Product;
import org.holdproof.core.rules.LethalityChoice;
import org.holdproof.core.rules.LethalityRow;

/**
 * The account of time of every core probe of a batch.
 *
 * @param probes one account a core probe
 * @param limits where hot ends and cold begins
 * @param choice what makes a cook of this food lethal; empty where the authority names nothing
 */
public record Accounts(List<Account> probes, Limits limits, Optional<LethalityChoice> choice) {
    public Accounts {
        probes = List.copyOf(probes);
    }

    /** The accounts of a batch. */
    public static Accounts of(Evidence evidence) {
        Product product = evidence.batch().product();
        Optional<LethalityChoice> choice = evidence.authority().lethalityFor(product);
        List<LethalityRow> rows =
                choice.map(found -> found.rowsFor(product.fatPercent())).orElse(List.of());
        double lowest =
                rows.stream().mapToDouble(row -> row.at().celsius()).min().orElse(Double.POSITIVE_INFINITY);
        Limits limits = Limits.of(evidence.authority(), product, lowest);
        return new Accounts(
                evidence.core().stream()
                        .map(trace -> Account.of(evidence, trace, limits, rows))
                        .toList(),
                limits,
                choice);
    }

    /** The earliest moment any probe was surely cold after the cook; empty where none was. */
    public OptionalLong firstCold() {
        return probes.stream()
                .flatMapToLong(account ->
                        account
                                .firstColdFrom(account.lethalMillis()
                                        .orElse(account.cook().toMillis()))
                                .stream())
                .min();
    }

    /** The earliest moment any probe left hot after the cook; the cook's end where none did. */
    public long firstLeftHot() {
        return probes.stream()
                .mapToLong(account -> account.spells().stream()
                        .findFirst()
                        .map(spell -> spell.span().fromMillis())
                        .orElse(account.cook().toMillis()))
                .min()
                .orElseThrow();
    }
}
