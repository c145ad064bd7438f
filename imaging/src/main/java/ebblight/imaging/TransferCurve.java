package ebblight.imaging;

/** How the light of a scene is written as code values: 0 to 1 on both sides, growing. */
public interface TransferCurve {

    /** Linear light of a code value, 0 to 1. */
    double toLinear(double code);

    /** Code value of linear light; light outside 0 to 1 is clipped. */
    double toCode(double linear);

    /** Linear light for every code of {@code bits} bits. */
    default float[] table(int bits) {
        int n = 1 << bits;
        float[] table = new float[n];
        for (int i = 0; i < n; i++) {
            table[i] = (float) toLinear(i / (n - 1.0));
        }
        return table;
    }

    /** IEC 61966-2-1. */
    TransferCurve SRGB = new TransferCurve() {
        @Override
        public double toLinear(double code) {
            return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
        }

        @Override
        public double toCode(double linear) {
            double l = Math.max(0, Math.min(1, linear));
            return l <= 0.0031308 ? 12.92 * l : 1.055 * Math.pow(l, 1 / 2.4) - 0.055;
        }
    };

    /** Code values that are the light itself. */
    TransferCurve LINEAR = gamma(1);

    /** A plain power law. */
    static TransferCurve gamma(double gamma) {
        return new TransferCurve() {
            @Override
            public double toLinear(double code) {
                return gamma == 1 ? code : Math.pow(code, gamma);
            }

            @Override
            public double toCode(double linear) {
                double l = Math.max(0, Math.min(1, linear));
                return gamma == 1 ? l : Math.pow(l, 1 / gamma);
            }
        };
    }

    /** Hybrid log-gamma back to scene light (ITU-R BT.2100, inverse OETF). */
    TransferCurve HLG = new TransferCurve() {
        private static final double A = 0.17883277;
        private static final double B = 1 - 4 * A;
        private static final double C = 0.5 - A * Math.log(4 * A);

        @Override
        public double toLinear(double code) {
            return code <= 0.5 ? code * code / 3 : (Math.exp((code - C) / A) + B) / 12;
        }

        @Override
        public double toCode(double linear) {
            double l = Math.max(0, Math.min(1, linear));
            return l <= 1.0 / 12 ? Math.sqrt(3 * l) : A * Math.log(12 * l - B) + C;
        }
    };

    /** Perceptual quantiser (SMPTE ST 2084) to display light, 1 = 1000 cd/m²; brighter is clipped. */
    TransferCurve PQ = new TransferCurve() {
        private static final double M1 = 2610.0 / 16384;
        private static final double M2 = 2523.0 / 32;
        private static final double C1 = 3424.0 / 4096;
        private static final double C2 = 2413.0 / 128;
        private static final double C3 = 2392.0 / 128;
        private static final double WHITE = 0.1;

        @Override
        public double toLinear(double code) {
            double p = Math.pow(code, 1 / M2);
            double light = Math.pow(Math.max(p - C1, 0) / (C2 - C3 * p), 1 / M1);
            return Math.min(1, light / WHITE);
        }

        @Override
        public double toCode(double linear) {
            double y = Math.pow(Math.max(0, Math.min(1, linear)) * WHITE, M1);
            return Math.pow((C1 + C2 * y) / (1 + C3 * y), M2);
        }
    };

    /** A curve given by evenly spaced samples of linear light, straight lines between them. */
    static TransferCurve sampled(double[] samples) {
        return new TransferCurve() {
            @Override
            public double toLinear(double code) {
                double at = Math.max(0, Math.min(1, code)) * (samples.length - 1);
                int below = Math.min(samples.length - 2, (int) at);
                return samples[below] + (at - below) * (samples[below + 1] - samples[below]);
            }

            @Override
            public double toCode(double linear) {
                int low = 0;
                int high = samples.length - 1;
                while (high - low > 1) {
                    int middle = (low + high) >>> 1;
                    if (samples[middle] <= linear) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                double span = samples[high] - samples[low];
                double share = span > 0 ? (linear - samples[low]) / span : 0;
                return (low + Math.max(0, Math.min(1, share))) / (samples.length - 1);
            }
        };
    }
}
