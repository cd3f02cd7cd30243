using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Distance;

/// <summary>A box of joint positions and a node of each solid, as it waits to be split.</summary>
internal struct SearchItem
{
    public double Bound;
    public long Order;
    public int NodeA, NodeB;

    /// <summary>The joint to split, or below zero a node.</summary>
    public int Split;

    public Vector256<double> Direction;
}

/// <summary>The boxes of a search, least bound first, equals in the order they came. Places are used again.</summary>
internal sealed class SearchQueue(int joints)
{
    private SearchItem[] items = new SearchItem[64];
    private int[]?[] boxes = new int[64][];
    private int[] heap = new int[64], free = new int[64];
    private int used, freed;
    private long order;

    public int Count { get; private set; }

    public double Least => Count > 0 ? items[heap[0]].Bound : double.PositiveInfinity;

    public ref SearchItem this[int number] => ref items[number];

    /// <summary>Numbers of the ranges, one for each joint.</summary>
    public int[] BoxOf(int number) => boxes[number] ??= new int[joints];

    public int New()
    {
        if (freed > 0)
            return free[--freed];
        if (used == items.Length)
        {
            Array.Resize(ref items, 2 * used);
            Array.Resize(ref boxes, 2 * used);
        }

        return used++;
    }

    public void Free(int number)
    {
        if (freed == free.Length)
            Array.Resize(ref free, 2 * freed);
        free[freed++] = number;
    }

    public void Add(int number)
    {
        items[number].Order = order++;
        if (Count == heap.Length)
            Array.Resize(ref heap, 2 * Count);
        var at = Count++;
        while (at > 0)
        {
            var parent = (at - 1) / 2;
            if (!Before(number, heap[parent]))
                break;
            heap[at] = heap[parent];
            at = parent;
        }

        heap[at] = number;
    }

    public int Take()
    {
        var first = heap[0];
        var last = heap[--Count];
        var at = 0;
        while ((2 * at) + 1 < Count)
        {
            var child = (2 * at) + 1;
            if (child + 1 < Count && Before(heap[child + 1], heap[child]))
                child++;
            if (!Before(heap[child], last))
                break;
            heap[at] = heap[child];
            at = child;
        }

        heap[at] = last;
        return first;
    }

    private bool Before(int one, int other)
    {
        ref readonly var a = ref items[one];
        ref readonly var b = ref items[other];
        return a.Bound < b.Bound || (a.Bound == b.Bound && a.Order < b.Order);
    }
}
