package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.List;

/** Reads the fields of a document, naming what is wrong. */
public final class Fields {

    private final JsonObject object;
    private final String path;

    public Fields(JsonObject object, String path) {
        this.object = object;
        this.path = path;
    }

    public boolean has(String name) {
        return object.has(name) && !object.isNull(name);
    }

    boolean isNumber(String name) {
        return object.isNumber(name);
    }

    public double number(String name) {
        if (!object.isNumber(name)) {
            throw new RequestException(path + name, has(name) ? "is no number" : "is missing");
        }
        double value = object.getDouble(name);
        if (!Double.isFinite(value)) {
            throw new RequestException(path + name, "must be a finite number");
        }
        return value;
    }

    public double number(String name, double otherwise) {
        return has(name) ? number(name) : otherwise;
    }

    /** A number that must lie between two limits. */
    public double number(String name, double otherwise, double low, double high) {
        double value = number(name, otherwise);
        if (!(value >= low && value <= high)) {
            throw new RequestException(
                    path + name, "must lie between " + plain(low) + " and " + plain(high) + ", was " + plain(value));
        }
        return value;
    }

    private static String plain(double value) {
        return value == Rounding.even(value) && Math.abs(value) < 1e9
                ? Long.toString((long) value)
                : Double.toString(value);
    }

    public int whole(String name, int otherwise) {
        double value = number(name, otherwise);
        if (value != Rounding.even(value) || Math.abs(value) > 1e9) {
            throw new RequestException(path + name, "must be a whole number, was " + value);
        }
        return (int) value;
    }

    /** A whole number that must lie between two limits. */
    public int whole(String name, int otherwise, int low, int high) {
        number(name, otherwise, low, high);
        return whole(name, otherwise);
    }

    public boolean flag(String name, boolean otherwise) {
        if (!has(name)) {
            return otherwise;
        }
        if (!object.isBoolean(name)) {
            throw new RequestException(path + name, "must be true or false");
        }
        return object.getBoolean(name);
    }

    public String text(String name) {
        if (!object.isString(name)) {
            throw new RequestException(path + name, has(name) ? "must be text" : "is missing");
        }
        return object.getString(name);
    }

    public String text(String name, String otherwise) {
        return has(name) ? text(name) : otherwise;
    }

    public Fields part(String name) {
        Object value = object.get(name);
        if (!(value instanceof JsonObject part)) {
            throw new RequestException(path + name, has(name) ? "must be an object" : "is missing");
        }
        return new Fields(part, path + name + ".");
    }

    public List<String> texts(String name) {
        List<String> list = new ArrayList<>();
        for (Object value : array(name)) {
            if (!(value instanceof String text)) {
                throw new RequestException(path + name, "must be a list of texts");
            }
            list.add(text);
        }
        return list;
    }

    public double[] numbers(String name) {
        JsonArray array = array(name);
        double[] numbers = new double[array.size()];
        for (int i = 0; i < numbers.length; i++) {
            if (!array.isNumber(i)) {
                throw new RequestException(path + name + "[" + i + "]", "is no number");
            }
            numbers[i] = array.getDouble(i);
        }
        return numbers;
    }

    public List<Fields> parts(String name) {
        List<Fields> list = new ArrayList<>();
        JsonArray array = array(name);
        for (int i = 0; i < array.size(); i++) {
            if (!(array.get(i) instanceof JsonObject part)) {
                throw new RequestException(path + name + "[" + i + "]", "must be an object");
            }
            list.add(new Fields(part, path + name + "[" + i + "]."));
        }
        return list;
    }

    private JsonArray array(String name) {
        if (!has(name)) {
            return new JsonArray();
        }
        if (!(object.get(name) instanceof JsonArray array)) {
            throw new RequestException(path + name, "must be a list");
        }
        return array;
    }

    public JsonArray rows(String name) {
        return array(name);
    }

    public String path(String name) {
        return path + name;
    }
}
