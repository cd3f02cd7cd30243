using Throwright.Files.Description;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Form;

/// <summary>The aircraft file as a form: every member that can be filled in, from the description that also reads it.</summary>
public static class FileForm
{
    private static readonly IReadOnlyList<FormField> All = Members(AircraftDescription.File, "");

    /// <summary>Members of the file itself, without its runs and points.</summary>
    public static IReadOnlyList<FormField> Aircraft { get; } = [.. All.Where(f => f.Name is not ("runs" or "points" or "$schema" or "format"))];

    /// <summary>Members of one run.</summary>
    public static IReadOnlyList<FormField> Run { get; } = All.First(f => f.Name == "runs").Inside;

    /// <summary>The field at a path of <see cref="Run"/> or <see cref="Aircraft"/>; list places such as bends[0] are looked through.</summary>
    public static FormField? Find(IReadOnlyList<FormField> form, string path)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(path);
        FormField? found = null;
        foreach (var step in path.Split('.'))
        {
            var bracket = step.IndexOf('[', StringComparison.Ordinal);
            var name = bracket < 0 ? step : step[..bracket];
            found = form.FirstOrDefault(f => f.Name == name);
            if (found is null)
                return null;
            form = found.Inside;
        }

        return found;
    }

    private static List<FormField> Members(IObject of, string path) =>
        [.. of.Members.Select(m => Field(m, m.Shape, path.Length == 0 ? m.Name : $"{path}.{m.Name}", of.Title))];

    private static FormField Field(Member member, Shape shape, string path, string part)
    {
        var field = Of(shape, path, member.Name, member.Meaning);
        return field with { Otherwise = member.Otherwise.Replace("`", "", StringComparison.Ordinal), IsRequired = member.IsRequired, Part = part };
    }

    private static FormField Of(Shape shape, string path, string name, string meaning)
    {
        var plain = new FormField(path, name, meaning, FieldForm.Json, shape.Limits.Replace("`", "", StringComparison.Ordinal), "", false);
        switch (shape)
        {
            case IObject o:
                return plain with { Form = FieldForm.Members, Inside = Members(o, path) };
            case RunsShape runs:
                return plain with { Form = FieldForm.List, Entry = FieldForm.Members, Inside = Members((IObject)runs.Inside.First(), "") };
            case IWords words:
                return plain with { Form = FieldForm.Word, Choices = [.. words.Words.Select(w => new FieldChoice(w.Text, w.Meaning))] };
            case FlagShape:
                return plain with { Form = FieldForm.Flag };
            case CountShape count:
                return plain with { Form = FieldForm.Count, Choices = [.. count.Allowed.Select(n => new FieldChoice($"{n}", ""))] };
            case TextShape text:
                return plain with { Form = text.HasManyLines ? FieldForm.Note : FieldForm.Text };
            case IdShape:
                return plain with { Form = FieldForm.Text };
        }

        var type = shape.GetType();
        if (!type.IsGenericType)
            return plain;
        var kind = type.GetGenericTypeDefinition();
        if (kind == typeof(TolerancedShape<>) || kind == typeof(ExactShape<>))
        {
            var exact = kind == typeof(ExactShape<>);
            var quantity = KindOf(type.GenericTypeArguments[0]);
            return plain with { Form = FieldForm.Quantity, Quantity = quantity, MayHaveTolerance = !exact, Example = QuantityReader.Examples(quantity, exact)[^1] };
        }

        if (kind == typeof(MadeShape<,>))
            return Of(shape.Inside.First(), path, name, meaning);
        if (kind == typeof(ShortOrLongShape<>))
        {
            var forms = shape.Inside.ToList();
            var (brief, full) = (Of(forms[0], path, name, meaning), Of(forms[1], path, name, meaning));
            // A name or a row: both are typed as they stand in the file.
            return full.Form == FieldForm.Members ? full with { Brief = brief } : plain;
        }

        if (kind == typeof(ListShape<>))
        {
            var entry = Of(shape.Inside.First(), path, name, meaning);
            return plain with { Form = FieldForm.List, Entry = entry.Form, Quantity = entry.Quantity, MayHaveTolerance = entry.MayHaveTolerance, Example = entry.Example, Choices = entry.Choices, Inside = entry.Inside };
        }

        return plain;
    }

    private static QuantityKind KindOf(Type quantity) =>
        quantity == typeof(Length) ? QuantityKind.Length
        : quantity == typeof(Angle) ? QuantityKind.Angle
        : quantity == typeof(Force) ? QuantityKind.Force
        : quantity == typeof(Torque) ? QuantityKind.Torque
        : quantity == typeof(Temperature) ? QuantityKind.Temperature
        : quantity == typeof(Stiffness) ? QuantityKind.Stiffness
        : quantity == typeof(TorsionRate) ? QuantityKind.TorsionRate
        : QuantityKind.Ratio;
}
