package ebblight.core.motion;

import ebblight.core.numeric.Work;

/** Mean and standard deviation in time of every pixel, a plane a colour, the change of light taken out. */
record Moments(float[][] mean, float[][] deviation) {

    static Moments of(Clip clip, float[] gain, Work work) {
        int n = clip.width() * clip.height();
        float[][] mean = new float[3][n];
        float[][] deviation = new float[3][n];
        work.forEach(3, c -> {
            float[] plane = new float[n];
            double[] sum = new double[n];
            double[] squares = new double[n];
            for (int i = 0; i < clip.frames(); i++) {
                clip.channel(i, c, plane);
                double scale = 1.0 / gain[i];
                for (int p = 0; p < n; p++) {
                    double v = plane[p] * scale;
                    sum[p] += v;
                    squares[p] += v * v;
                }
            }
            double count = clip.frames();
            for (int p = 0; p < n; p++) {
                double m = sum[p] / count;
                mean[c][p] = (float) m;
                deviation[c][p] = (float) Math.sqrt(Math.max(0, squares[p] / count - m * m));
            }
        });
        return new Moments(mean, deviation);
    }
}
