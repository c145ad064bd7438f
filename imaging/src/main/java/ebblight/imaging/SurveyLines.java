package ebblight.imaging;

/**
 * Where each line of a picture lies between the lines of its survey, borders carried outward.
 *
 * @param first of the two lines of the survey
 * @param past share of the way from there to the next, 0 to 1
 */
record SurveyLines(int[] first, float[] past) {

    static SurveyLines of(int lines, int ofSurvey, int crop) {
        int[] first = new int[lines];
        float[] past = new float[lines];
        double step = (ofSurvey + 2.0 * crop) / lines;
        for (int k = 0; k < lines; k++) {
            double at = Math.max(0, Math.min(ofSurvey - 1, (k + 0.5) * step - 0.5 - crop));
            first[k] = Math.min((int) at, Math.max(0, ofSurvey - 2));
            past[k] = (float) (at - first[k]);
        }
        return new SurveyLines(first, past);
    }

    /** Row {@code y} of the picture, at the width of the survey. */
    void row(float[] plane, int width, int y, float[] into) {
        int at = first[y] * width;
        int next = at + width < plane.length ? at + width : at;
        float down = past[y];
        for (int x = 0; x < width; x++) {
            into[x] = plane[at + x] * (1 - down) + plane[next + x] * down;
        }
    }

    /** A row of the survey at the width of the picture. */
    void spread(float[] row, float[] into) {
        int last = row.length - 1;
        for (int x = 0; x < into.length; x++) {
            int at = first[x];
            into[x] = row[at] * (1 - past[x]) + row[Math.min(at + 1, last)] * past[x];
        }
    }
}
