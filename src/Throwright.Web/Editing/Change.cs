namespace Throwright.Web.Editing;

/// <summary>One change of a text: at a place, some characters went and others came. It can be done and undone.</summary>
/// <param name="Name">What was done, e.g. "arm radius 1 1/4 in": what the undo button says.</param>
public sealed record Change(string Name, int Start, string Removed, string Inserted)
{
    /// <summary>The smallest change that turns one text into the other.</summary>
    public static Change Between(string name, string before, string after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var least = Math.Min(before.Length, after.Length);
        var front = 0;
        while (front < least && before[front] == after[front])
            front++;
        var back = 0;
        while (back < least - front && before[^(back + 1)] == after[^(back + 1)])
            back++;
        // A pair of characters that are one letter is not cut.
        if (front > 0 && char.IsHighSurrogate(before[front - 1]))
            front--;
        if (back > 0 && char.IsLowSurrogate(before[^back]))
            back--;
        return new(name, front, before[front..(before.Length - back)], after[front..(after.Length - back)]);
    }

    public string Do(string text) => Put(text, Removed, Inserted);

    public string Undo(string text) => Put(text, Inserted, Removed);

    /// <summary>The text holds at the place what the change takes away.</summary>
    public bool Fits(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Start >= 0 && Start + Removed.Length <= text.Length && text.AsSpan(Start, Removed.Length).SequenceEqual(Removed);
    }

    private string Put(string text, string old, string with)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.Concat(text.AsSpan(0, Start), with, text.AsSpan(Start + old.Length));
    }
}
