namespace Throwright.Shapes.Tests;

public class EquatableListTests
{
    private sealed record Holder(EquatableList<string> Names);

    [Fact]
    public void List_SameContent_IsEqualAndHashesEqual()
    {
        EquatableList<string> a = ["p", "q"], b = "pq".Select(c => c.ToString()).ToEquatableList();
        Assert.True(a.Equals(b));
        Assert.True(a.Equals((object)b));
        Assert.Equal(a.GetHashCode(), b.GetHashCode());
        Assert.Equal(new Holder(a), new Holder(b));
    }

    [Fact]
    public void List_OtherContentOrderOrLength_IsNotEqual()
    {
        EquatableList<int> a = [1, 2];
        EquatableList<int>[] others = [[2, 1], [1], [1, 2, 3], []];
        Assert.All(others, other => Assert.False(a.Equals(other)));
        Assert.False(a.Equals(null));
        Assert.False(a.Equals((object)"1, 2"));
    }

    [Fact]
    public void List_MadeFromAnArray_DoesNotChangeWithIt()
    {
        int[] source = [1, 2, 3];
        EquatableList<int> spanned = EquatableList.Of<int>(source), copied = source.ToEquatableList();
        source[0] = 9;
        Assert.Equal([1, 2, 3], spanned);
        Assert.Equal([1, 2, 3], copied);
        Assert.Equal(3, copied.Count);
        Assert.Equal(2, copied[1]);
    }

    [Fact]
    public void List_Empty_IsOneAndTheSame()
    {
        EquatableList<int> none = [];
        Assert.Same(EquatableList<int>.Empty, none);
        Assert.True(none.Equals(Array.Empty<int>().ToEquatableList()));
        Assert.Empty(none);
    }

    [Fact]
    public void List_WithNullsAndDerivedArrays_Compares()
    {
        EquatableList<string?> a = [null, "x"], b = [null, "x"];
        Assert.True(a.Equals(b));
        object[] strings = new string[] { "s" };
        EquatableList<object> c = strings.ToEquatableList(), d = EquatableList.Of<object>(["s"]);
        Assert.True(c.Equals(d));
    }
}
