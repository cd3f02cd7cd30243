using System.Collections;
using System.Runtime.CompilerServices;

namespace Throwright.Shapes;

/// <summary>A read-only list that compares by content, so that records holding one do too.</summary>
[CollectionBuilder(typeof(EquatableList), nameof(EquatableList.Of))]
public sealed class EquatableList<T> : IReadOnlyList<T>, IEquatable<EquatableList<T>>
{
    private readonly T[] items;

    internal EquatableList(T[] items) => this.items = items;

    public static EquatableList<T> Empty { get; } = new([]);

    public int Count => items.Length;

    public T this[int index] => items[index];

    public bool Equals(EquatableList<T>? other) => other is not null && items.AsSpan().SequenceEqual(other.items);

    public override bool Equals(object? obj) => Equals(obj as EquatableList<T>);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();
}

/// <summary>Makes lists of <see cref="EquatableList{T}"/> from collection expressions and sequences.</summary>
public static class EquatableList
{
    public static EquatableList<T> Of<T>(ReadOnlySpan<T> items) => items.IsEmpty ? EquatableList<T>.Empty : new([.. items]);

    public static EquatableList<T> ToEquatableList<T>(this IEnumerable<T> items) => new([.. items]);
}
