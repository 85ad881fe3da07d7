package org.holdproof.core.rules;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.holdproof.core.batch.Product;
import org.holdproof.core.batch.Product.Form;
import org.holdproof.core.batch.Product.Species;

/**
 * A process the authority lets its tables be used for without one of their conditions, because no support is published
 * for it yet; the vulnerability goes with it.
 *
 * @param waives the condition that is not asked
 * @param species the species it is for; empty: all
 * @param forms the forms it is for; empty: all
 * @param cuts words one of which the product's cut or name must hold, in lower case; empty: any cut
 * @param vulnerability what the kitchen must be able to answer for, in words
 */
public record SupportGap(
        String id,
        String title,
        Waives waives,
        Set<Species> species,
        Set<Form> forms,
        List<String> cuts,
        String vulnerability,
        Citation citation)
        implements Rule {

    public SupportGap {
        species = Set.copyOf(species);
        forms = Set.copyOf(forms);
        cuts = List.copyOf(cuts);
    }

    /** The conditions a gap may waive. */
    public enum Waives {
        COME_UP,
        HUMIDITY
    }

    /** Whether it is for this product. */
    public boolean covers(Product product) {
        String said = (product.cut() + " " + product.name()).toLowerCase(Locale.ROOT);
        return (species.isEmpty() || species.contains(product.species()))
                && (forms.isEmpty() || forms.contains(product.form()))
                && (cuts.isEmpty() || cuts.stream().anyMatch(said::contains));
    }
}
