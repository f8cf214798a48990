/* What starting any program costs: built static, it does nothing. */
int main(void)
{
    return 0;
}
