package org.holdproof.core.heat;

/** Conductivity in W/(m K) and diffusivity in m²/s, the same at every temperature. */
record ConstantProperties(double conductivity, double diffusivity) implements ThermalProperties {

    ConstantProperties {
        if (!(conductivity > 0)
                || !Double.isFinite(conductivity)
                || !(diffusivity > 0)
                || !Double.isFinite(diffusivity)) {
            throw new IllegalArgumentException("conductivity and diffusivity must be positive: " + conductivity
                    + " W/(m K), " + diffusivity + " m²/s");
        }
    }

    @Override
    public double conductivity(double celsius) {
        return conductivity;
    }

    @Override
    public double heatCapacity(double celsius) {
        return conductivity / diffusivity;
    }

    @Override
    public double diffusivity(double celsius) {
        return diffusivity;
    }

    @Override
    public boolean isConstant() {
        return true;
    }
}
