package org.holdproof.core.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.holdproof.core.batch.Product.Species;
import org.holdproof.core.quantity.UnreadableQuantityException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Prices are invented. */
class ServedCostTest {
    private static final QualityModels MODELS = QualityModels.builtIn();
    private static final double POUND = 0.45359237;
    private static final double SIX_OUNCES = 6 * POUND / 16;

    private static WeightLoss loss(CookHistory history, Smoking smoking) {
        return QualityOutlook.of(
                        MODELS,
                        new QualityOutlook.Piece(Species.BEEF, MODELS.tables().cut("brisket-flat-trimmed"), 75),
                        CookHistories.known(history),
                        smoking)
                .weight()
                .orElseThrow();
    }

    private static WeightLoss bag() {
        return loss(Histories.bath(75, 68.3, 24), new Smoking.None());
    }

    private static WeightLoss smoker() {
        return loss(Histories.through(0, 5, 240, 70, 480, 75, 720, 95, 780, 80), new Smoking.ToTheEnd());
    }

    /** 12 lb that lose 26 to 41 % leave 7.1 to 8.8 lb: 18 portions of 6 oz are there at worst. */
    @Test
    void portionsAreCountedAtTheCautiousEnd() throws UnreadableQuantityException {
        ServedCost cost = new ServedCost(Price.parse("$4.99/lb"), 0, bag(), SIX_OUNCES);

        assertThat(12 * cost.leastYield()).isCloseTo(7.1, within(0.06));
        assertThat(12 * cost.mostYield()).isCloseTo(8.8, within(0.06));
        assertThat(cost.portions(12 * POUND)).isEqualTo(18);
    }

    @Test
    void aDearerGradeAndASmokerAllTheWayAreSetBesideThePlan() throws UnreadableQuantityException {
        ServedCost select = new ServedCost(Price.parse("$4.99/lb"), 0.1, bag(), SIX_OUNCES);
        ServedCost prime = new ServedCost(Price.parse("$9.99/lb"), 0.1, bag(), SIX_OUNCES);
        ServedCost smoker = new ServedCost(Price.parse("$4.99/lb"), 0.1, smoker(), SIX_OUNCES);

        assertThat(select.against(prime)).isEqualTo(ServedCost.Rank.CHEAPER);
        assertThat(prime.against(select)).isEqualTo(ServedCost.Rank.DEARER);
        // the two losses overlap: no one can be promised the cheaper
        assertThat(select.against(smoker)).isEqualTo(ServedCost.Rank.OPEN);
        assertThat(select.mostAPortion()).isLessThan(smoker.mostAPortion());
        assertThat(select.leastAPortion()).isLessThan(smoker.leastAPortion());
    }

    @Test
    void pricesAreReadAsCooksWriteThem() throws UnreadableQuantityException {
        assertThat(Price.parse("4.99 / lb").amountPerKilogram()).isCloseTo(4.99 / POUND, within(1e-9));
        assertThat(Price.parse("$4.99/lb").words(12.5)).isEqualTo("$12.50");
        assertThat(Price.parse("11 EUR per kg").amountPerKilogram()).isEqualTo(11);
        assertThat(Price.parse("11 EUR per kg").words(3)).isEqualTo("3.00 EUR");
        assertThat(Price.parse("0.5/oz").words(1)).isEqualTo("1.00");
    }

    @ParameterizedTest(name = "[{0}]")
    @ValueSource(strings = {"4.99", "$4,99/lb", "free / lb", "0 / lb", "4.99 / mile", "$4 EUR/lb", "-3 / kg", ""})
    void whatIsNoPriceIsRefused(String text) {
        assertThatThrownBy(() -> Price.parse(text)).isInstanceOf(UnreadableQuantityException.class);
    }

    @Test
    void figuresOutOfRangeAreRefused() {
        Price price = new Price("", 10);
        WeightLoss loss = bag();
        assertThatThrownBy(() -> new ServedCost(price, 1, loss, 0.2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ServedCost(price, 0, loss, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
